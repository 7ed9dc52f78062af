package org.climbwatch.signal;

import java.util.OptionalDouble;

/** How fast the cold junction warms or cools, over the last five minutes. */
final class ColdJunctionTrend {
  private static final long SPACING_MILLIS = 30_000;
  private static final long WINDOW_MILLIS = 300_000;

  /** ms that must lie between the two ends; while idle, readings lie 70 s apart. */
  private static final long LEAST_MILLIS = 230_000;

  private static final int CAPACITY = (int) (WINDOW_MILLIS / SPACING_MILLIS) + 2;

  private final long[] millis = new long[CAPACITY];
  private final double[] celsius = new double[CAPACITY];
  private int oldest;
  private int size;
  private OptionalDouble cPerMinute = OptionalDouble.empty();

  void reset() {
    size = 0;
    cPerMinute = OptionalDouble.empty();
  }

  void add(long atMillis, double coldJunctionC) {
    if (size > 0 && atMillis - millis[place(size - 1)] < SPACING_MILLIS) {
      return;
    }
    while (size > 0 && (atMillis - millis[oldest] > WINDOW_MILLIS || size == CAPACITY)) {
      oldest = place(1);
      size--;
    }
    millis[place(size)] = atMillis;
    celsius[place(size)] = coldJunctionC;
    size++;
    long span = atMillis - millis[oldest];
    cPerMinute =
        span < LEAST_MILLIS
            ? OptionalDouble.empty()
            : OptionalDouble.of((coldJunctionC - celsius[oldest]) / (span / 60_000.0));
  }

  /** °C/min, negative while it cools; empty until some four minutes are known. */
  OptionalDouble cPerMinute() {
    return cPerMinute;
  }

  private int place(int index) {
    return (oldest + index) % CAPACITY;
  }
}
