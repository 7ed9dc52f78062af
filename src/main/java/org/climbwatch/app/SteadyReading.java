package org.climbwatch.app;

import java.util.Arrays;
import java.util.Locale;
import org.climbwatch.thermocouple.ProbeErrors;

/**
 * What a probe reads while its surroundings keep still.
 *
 * @param meanC °C, as read, before any correction
 * @param spreadC °C, standard deviation of the single readings
 * @param driftC °C by which the later half lies above the earlier one
 * @param count how many readings
 */
record SteadyReading(double meanC, double spreadC, double driftC, int count) {
  static final int FEWEST = 4;

  /** °C: a probe that still creeps by more has not come to rest; an ice bath is known to 0.2. */
  private static final double STEADY_C = 0.3;

  /**
   * @param readC °C, in their order, at least {@link #FEWEST}
   */
  static SteadyReading of(double[] readC) {
    int n = readC.length;
    if (n < FEWEST) {
      throw new IllegalArgumentException(n + " readings are too few; at least " + FEWEST);
    }
    double meanC = Arrays.stream(readC).average().orElseThrow();
    double squares = Arrays.stream(readC).map(each -> (each - meanC) * (each - meanC)).sum();
    double earlierC = Arrays.stream(readC, 0, n / 2).average().orElseThrow();
    double laterC = Arrays.stream(readC, n / 2, n).average().orElseThrow();
    return new SteadyReading(meanC, Math.sqrt(squares / (n - 1)), laterC - earlierC, n);
  }

  /** Whether it keeps still, as far as its own scatter lets one tell. */
  boolean steady() {
    double scatterC = 2 * spreadC * Math.sqrt(4.0 / count);
    return Math.abs(driftC) <= STEADY_C + scatterC;
  }

  /**
   * °C, expanded uncertainty (k = 2) of the mean alone: its scatter (type A), half of what it
   * drifted and half a step of the instrument, both as limits of a rectangular distribution (GUM
   * 4.2.3 and 4.3.7).
   *
   * @param uvPerC slope of the couple there, above 0 where the instrument has a step in µV
   */
  double expandedC(ProbeErrors errors, double uvPerC) {
    double scatterC = spreadC / Math.sqrt(count);
    double driftLimitC = driftC / 2;
    double stepC = errors.stepC() / 2;
    double voltageStepC = errors.stepUv() == 0 ? 0 : errors.stepUv() / 2 / Math.max(uvPerC, 0.1);
    double limits = driftLimitC * driftLimitC + stepC * stepC + voltageStepC * voltageStepC;
    return 2 * Math.sqrt(scatterC * scatterC + limits / 3);
  }

  String text() {
    return String.format(
        Locale.ROOT,
        "reads %.2f C, spread %.2f C, %d readings, later half %+.2f C",
        meanC,
        spreadC,
        count,
        driftC);
  }
}
