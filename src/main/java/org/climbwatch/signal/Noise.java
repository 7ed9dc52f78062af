package org.climbwatch.signal;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * How much a temperature shivers from one reading to the next: the middle size of the second
 * differences over runs of thirty readings, as a standard deviation.
 *
 * <p>Second differences leave out a steady climb; the middle one leaves out sparks and single
 * steps. For independent normal noise of spread s a second difference has the spread s sqrt(6), and
 * the middle of its size is 0.6745 of that (the normal distribution's quartile).
 */
final class Noise {
  private static final int RUN = 30;
  private static final double TO_STANDARD = 1 / (0.6745 * Math.sqrt(6));

  private final double[] sizesC = new double[RUN];
  private int filled;
  private int known;
  private double lastC;
  private double beforeC;
  private OptionalDouble noiseC = OptionalDouble.empty();

  void reset() {
    filled = 0;
    known = 0;
    noiseC = OptionalDouble.empty();
  }

  /** What lies before a pause or a fault is not compared with what comes behind. */
  void breakOff() {
    known = 0;
  }

  void add(double celsius) {
    if (known >= 2) {
      sizesC[filled++] = Math.abs(celsius - 2 * lastC + beforeC);
      if (filled == RUN) {
        Arrays.sort(sizesC);
        noiseC = OptionalDouble.of(TO_STANDARD * sizesC[RUN / 2]);
        filled = 0;
      }
    }
    known++;
    beforeC = lastC;
    lastC = celsius;
  }

  /** °C, of the last full run; empty before the first. */
  OptionalDouble noiseC() {
    return noiseC;
  }
}
