package org.climbwatch.journal;

import java.util.Arrays;

/** Collects the points of a curve. */
final class CurvePoints {
  private long[] elapsedMs = new long[1024];
  private double[] temperatureC = new double[1024];
  private int size;

  void add(long atMs, double value) {
    if (size == elapsedMs.length) {
      elapsedMs = Arrays.copyOf(elapsedMs, 2 * size);
      temperatureC = Arrays.copyOf(temperatureC, 2 * size);
    }
    elapsedMs[size] = atMs;
    temperatureC[size] = value;
    size++;
  }

  /** Adds a point, unless it is the last one once more. */
  void addUnlessSame(long atMs, double value) {
    if (size == 0 || elapsedMs[size - 1] != atMs || temperatureC[size - 1] != value) {
      add(atMs, value);
    }
  }

  /** Marks a gap behind the last point, as long as there is one. */
  void gap() {
    if (size > 0 && !Double.isNaN(temperatureC[size - 1])) {
      add(elapsedMs[size - 1], Double.NaN);
    }
  }

  Curve curve() {
    return new Curve(Arrays.copyOf(elapsedMs, size), Arrays.copyOf(temperatureC, size));
  }
}
