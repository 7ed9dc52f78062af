package org.climbwatch.signal;

import java.util.Arrays;

/** Values that count by weight, for quantiles. */
final class WeightedValues {
  /** More than there may be values; so few of a value's last bits do not matter to its place. */
  private static final long PLACES = 256;

  private final double[] value;
  private final double[] weight;

  /** By size: places in the lists, each below the high bits of its value. */
  private final long[] order;

  private int size;
  private boolean sorted;
  private double total;

  WeightedValues(int most) {
    value = new double[most];
    weight = new double[most];
    order = new long[most];
    if (most > PLACES) {
      throw new IllegalArgumentException("at most " + PLACES + " values, were " + most);
    }
  }

  void clear() {
    size = 0;
    total = 0;
  }

  /** Takes a value; not NaN. */
  void add(double newValue, double newWeight) {
    value[size] = newValue;
    weight[size] = newWeight;
    order[size] = ascending(newValue) & -PLACES | size;
    size++;
    total += newWeight;
    sorted = false;
  }

  /** Bits that lie among one another as the values do. */
  private static long ascending(double value) {
    long bits = Double.doubleToRawLongBits(value);
    return bits ^ ((bits >> 63) & Long.MAX_VALUE);
  }

  /** The middle, and what lies between two tails. */
  Span span(double tail) {
    return new Span(quantile(tail), quantile(0.5), quantile(1 - tail));
  }

  private double quantile(double share) {
    if (!sorted) {
      Arrays.sort(order, 0, size);
      sorted = true;
    }
    double sum = 0;
    int place = 0;
    for (int i = 0; i < size; i++) {
      place = (int) (order[i] & (PLACES - 1));
      sum += weight[place];
      if (sum >= share * total) {
        return value[place];
      }
    }
    return value[place];
  }
}
