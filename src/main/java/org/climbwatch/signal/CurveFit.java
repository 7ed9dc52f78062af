package org.climbwatch.signal;

/**
 * Least squares of one stretch of the curve against {@code T(t) = a + b (1 - exp(-k t)) / k}, t = 0
 * at its newest end: what constant gain against losses that grow with temperature gives. For each
 * rate k of a fixed list the fit is a straight line in a and b, so nothing has to converge.
 *
 * <p>k = 0 is a steady climb, a negative k one that still grows: no level shows.
 */
final class CurveFit {
  /** Rates 1/s: growing, steady, and time constants from six hours down to four minutes. */
  static final double[] RATES = {
    -1 / 1800.0,
    -1 / 5400.0,
    0,
    1 / 21600.0,
    1 / 12000.0,
    1 / 7500.0,
    1 / 5000.0,
    1 / 3500.0,
    1 / 2500.0,
    1 / 1800.0,
    1 / 1300.0,
    1 / 950.0,
    1 / 700.0,
    1 / 500.0,
    1 / 350.0,
    1 / 240.0
  };

  /** From one time constant of the list to the next, at most about; the square root of it. */
  static final double STEP = 1.3;

  /** °C: half a step of a 14-bit amplifier hides at least this in a mean of some readings. */
  private static final double LEAST_NOISE_C = 0.04;

  private static final double MOST_CORRELATION = 0.9;

  /**
   * Of the way climbed in twenty minutes: how far a real kiln, which answers at many paces and
   * whose fire nobody holds quite still, strays from one such curve. Set on the development half of
   * the ensemble (docs/forecast.md) so that nine of ten true levels lie in their intervals.
   */
  private static final double STRAYS = 0.015;

  private static final double LEAST_STRAY_C = 0.1;
  private static final double STRAY_OVER_S = 1200;

  /** Likely before the curve is seen: growing seldom, steady and very quick ones less often. */
  private static final double GROWING = 0.25;

  private static final double STEADY = 0.5;
  private static final double QUICK = 0.3;
  private static final double QUICK_BELOW_S = 800;

  final double[] temperatureC = new double[RATES.length];
  final double[] climbCPerS = new double[RATES.length];
  final double[] climbErrorCPerS = new double[RATES.length];
  final double[] weight = new double[RATES.length];
  private final double[] misfit = new double[RATES.length];
  int best;
  int bins;
  double noiseC;

  /** Of neighbours among the residuals: how many bins make one that is independent. */
  double dependence;

  static double shape(double rate, double seconds) {
    return rate == 0 ? seconds : (1 - StrictMath.exp(-rate * seconds)) / rate;
  }

  /**
   * Draws the lines and finds the best of them, with its noise.
   *
   * @param originC °C of the newest bin
   */
  void lines(CurveSums.Sums sums, double originC) {
    bins = sums.bins;
    best = 0;
    for (int k = 0; k < RATES.length; k++) {
      line(sums, originC, k);
      best = misfit[k] < misfit[best] ? k : best;
    }
    noiseC = Math.max(Math.sqrt(misfit[best] / Math.max(bins - 3, 1)), LEAST_NOISE_C);
  }

  /** Says of the lines drawn through the newest bins how much each counts. */
  void weighLines(Bins all) {
    dependence = dependence(all, all.size() - bins);
    weigh();
  }

  private void weigh() {
    double strayC = Math.max(LEAST_STRAY_C, STRAYS * Math.abs(climbCPerS[best]) * STRAY_OVER_S);
    double variance = noiseC * noiseC * dependence + strayC * strayC * bins;
    double sum = 0;
    for (int k = 0; k < RATES.length; k++) {
      weight[k] = likely(k) * StrictMath.exp(-(misfit[k] - misfit[best]) / (2 * variance));
      sum += weight[k];
      climbErrorCPerS[k] *= Math.sqrt(variance);
    }
    for (int k = 0; k < RATES.length; k++) {
      weight[k] /= sum;
    }
  }

  private static double likely(int k) {
    if (RATES[k] <= 0) {
      return RATES[k] < 0 ? GROWING : STEADY;
    }
    return 1 / RATES[k] < QUICK_BELOW_S ? QUICK : 1;
  }

  private void line(CurveSums.Sums sums, double originC, int k) {
    double n = bins;
    double varX = sums.xx[k] - sums.x[k] * sums.x[k] / n;
    double slope = (sums.xy[k] - sums.x[k] * sums.y / n) / varX;
    double level = (sums.y - slope * sums.x[k]) / n;
    climbCPerS[k] = slope;
    temperatureC[k] = originC + level;
    climbErrorCPerS[k] = 1 / Math.sqrt(varX);
    misfit[k] = Math.max(sums.yy - sums.y * sums.y / n - slope * slope * varX, 0);
  }

  private double dependence(Bins all, int from) {
    double before = residualC(all, from);
    double sum = before * before;
    double steps = 0;
    for (int i = from + 1; i < all.size(); i++) {
      double now = residualC(all, i);
      steps += (now - before) * (now - before);
      sum += now * now;
      before = now;
    }
    if (sum <= 0) {
      return 1;
    }
    double correlation = Math.min(Math.max(1 - steps / (2 * sum), 0), MOST_CORRELATION);
    return (1 + correlation) / (1 - correlation);
  }

  private double residualC(Bins all, int i) {
    return all.celsius(i)
        - temperatureC[best]
        - climbCPerS[best] * CurveSums.shape(best, all.lag(i));
  }
}
