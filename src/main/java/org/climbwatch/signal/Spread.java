package org.climbwatch.signal;

/** How far values lie apart. */
final class Spread {
  private Spread() {}

  /** The highest less the lowest of so many; negative infinity of none. */
  static double of(double[] values, int from, int many) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = from; i < from + many; i++) {
      low = Math.min(low, values[i]);
      high = Math.max(high, values[i]);
    }
    return high - low;
  }
}
