package org.climbwatch.signal;

import java.util.Optional;

/**
 * The climb over a sliding window: the slope of the least-squares line, and its uncertainty.
 *
 * <p>The sums run along with the window, so a reading costs the same however long the window is.
 * They are taken about an anchor inside the window and made afresh once a window's worth of
 * readings has passed, so that rounding cannot build up.
 *
 * <p>The uncertainty is the slope's standard error from the scatter about the line, times two.
 * Flame noise hangs together from one reading to the next, which makes the plain formula too proud;
 * it is widened by the lag-one correlation r of the residuals, {@code sqrt((1 + r) / (1 - r))} (the
 * usual effective-sample-size correction for a first-order autoregressive process; from memory).
 */
final class ClimbEstimator {
  private static final int LEAST_READINGS = 5;

  /** Of the window that must be filled before a climb is given. */
  private static final double LEAST_FILL = 0.5;

  /** °C, standard: half a step of a 14-bit amplifier hides at least this (0.25 °C / sqrt 12). */
  private static final double LEAST_NOISE_C = 0.07;

  private static final double MOST_CORRELATION = 0.95;

  private final long windowMillis;
  private long[] millis = new long[64];
  private double[] temperatureC = new double[64];
  private int oldest;
  private int size;
  private int addedSinceAnchor;
  private long anchorMillis;
  private double anchorC;
  private double sumT;
  private double sumTT;
  private double sumY;
  private double sumTY;
  private double sumYY;
  private double sumStepTT;
  private double sumStepTY;
  private double sumStepYY;

  ClimbEstimator(double windowSeconds) {
    windowMillis = Math.round(windowSeconds * 1000);
  }

  void reset() {
    size = 0;
    oldest = 0;
    addedSinceAnchor = 0;
  }

  void add(long atMillis, double celsius) {
    while (size >= LEAST_READINGS && atMillis - millis[oldest] > windowMillis) {
      dropOldest();
    }
    if (size == millis.length) {
      grow();
    }
    int place = (oldest + size) & (millis.length - 1);
    millis[place] = atMillis;
    temperatureC[place] = celsius;
    size++;
    addedSinceAnchor++;
    if (size == 1 || addedSinceAnchor > size) {
      anchorAfresh();
    } else {
      weigh(size - 1, 1);
    }
  }

  /** Empty until half the window is filled by at least five readings. */
  Optional<Climb> climb() {
    if (size < LEAST_READINGS || spanMillis() < LEAST_FILL * windowMillis) {
      return Optional.empty();
    }
    double n = size;
    double varT = sumTT - sumT * sumT / n;
    double covTY = sumTY - sumT * sumY / n;
    double varY = sumYY - sumY * sumY / n;
    double slope = covTY / varT;
    double scatter = Math.max(varY - slope * covTY, 0);
    double noise = Math.max(Math.sqrt(scatter / (n - 2)), LEAST_NOISE_C);
    double error = noise / Math.sqrt(varT) * widening(slope, scatter);
    return Optional.of(new Climb(slope * 3600, 2 * error * 3600));
  }

  private double widening(double slope, double scatter) {
    if (scatter <= 0) {
      return 1;
    }
    double steps = sumStepYY - 2 * slope * sumStepTY + slope * slope * sumStepTT;
    double correlation = Math.min(Math.max(1 - steps / (2 * scatter), 0), MOST_CORRELATION);
    return Math.sqrt((1 + correlation) / (1 - correlation));
  }

  private long spanMillis() {
    return millis[(oldest + size - 1) & (millis.length - 1)] - millis[oldest];
  }

  private void dropOldest() {
    weigh(0, -1);
    oldest = (oldest + 1) & (millis.length - 1);
    size--;
  }

  /**
   * Adds or takes away the reading at a place counted from the oldest, and the step that joins it
   * to its inner neighbour: the one before a new reading, the one after a leaving one.
   */
  private void weigh(int index, int sign) {
    int mask = millis.length - 1;
    int place = (oldest + index) & mask;
    double t = (millis[place] - anchorMillis) / 1000.0;
    double y = temperatureC[place] - anchorC;
    sumT += sign * t;
    sumTT += sign * t * t;
    sumY += sign * y;
    sumTY += sign * t * y;
    sumYY += sign * y * y;
    if (size < 2) {
      return;
    }
    int neighbour = (place + (sign > 0 ? -1 : 1)) & mask;
    double stepT = (millis[place] - millis[neighbour]) / 1000.0;
    double stepY = temperatureC[place] - temperatureC[neighbour];
    sumStepTT += sign * stepT * stepT;
    sumStepTY += sign * stepT * stepY;
    sumStepYY += sign * stepY * stepY;
  }

  private void anchorAfresh() {
    int mask = millis.length - 1;
    int middle = (oldest + size / 2) & mask;
    anchorMillis = millis[middle];
    anchorC = temperatureC[middle];
    sumT = sumTT = sumY = sumTY = sumYY = 0;
    sumStepTT = sumStepTY = sumStepYY = 0;
    int all = size;
    for (size = 1; size <= all; size++) {
      weigh(size - 1, 1);
    }
    size = all;
    addedSinceAnchor = 0;
  }

  private void grow() {
    long[] moreMillis = new long[millis.length * 2];
    double[] moreC = new double[moreMillis.length];
    for (int i = 0; i < size; i++) {
      int place = (oldest + i) & (millis.length - 1);
      moreMillis[i] = millis[place];
      moreC[i] = temperatureC[place];
    }
    millis = moreMillis;
    temperatureC = moreC;
    oldest = 0;
  }
}
