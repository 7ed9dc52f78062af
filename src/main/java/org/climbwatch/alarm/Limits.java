package org.climbwatch.alarm;

/** Checks of settings. */
final class Limits {
  private Limits() {}

  /** Refuses a number outside its range, NaN included. */
  static void require(double value, double low, double high, String name) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          name + " must be " + low + " to " + high + ", was " + value);
    }
  }
}
