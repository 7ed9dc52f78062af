package org.climbwatch.signal;

/**
 * Sees when the fire has been changed at once: the last bins leave the curve that was fitted before
 * them.
 */
final class ChangeWatch {
  /** Bins that must leave the curve together. */
  static final int SEEN_AFTER = 4;

  /** Bins after a change in which gas, skin and probe answer: 4 min. */
  static final int SETTLING = 12;

  private static final int REMEMBERED = 8;
  private static final double LEAST_C = 2;
  private static final double LEAST_SPREADS = 2.5;

  private final double[] temperatureC = new double[REMEMBERED];
  private final double[] climbCPerS = new double[REMEMBERED];
  private final double[] rate = new double[REMEMBERED];
  private final double[] spreadC = new double[REMEMBERED];
  private int count;

  void clear() {
    count = 0;
  }

  /** Takes the curve fitted up to the newest bin. */
  void remember(CurveFit fit) {
    int place = count % REMEMBERED;
    int k = fit.best;
    temperatureC[place] = fit.temperatureC[k];
    climbCPerS[place] = fit.climbCPerS[k];
    rate[place] = CurveFit.RATES[k];
    double ahead = SEEN_AFTER * Bins.BIN_S;
    double level = fit.noiseC * Math.sqrt(fit.dependence / fit.bins);
    double slope = fit.climbErrorCPerS[k] * ahead;
    double own = fit.noiseC * Math.sqrt(Math.min(fit.dependence / SEEN_AFTER, 1));
    spreadC[place] = Math.sqrt(4 * level * level + slope * slope + own * own);
    count++;
  }

  /** °C by which the newest bins leave what was expected of them, 0 while they do not. */
  double offC(Bins bins) {
    if (count < SEEN_AFTER || bins.size() <= SEEN_AFTER) {
      return 0;
    }
    int place = (count - SEEN_AFTER) % REMEMBERED;
    double off = 0;
    int sign = 0;
    for (int i = bins.size() - SEEN_AFTER; i < bins.size(); i++) {
      double seconds = (SEEN_AFTER - bins.lag(i)) * Bins.BIN_S;
      double expectedC =
          temperatureC[place] + climbCPerS[place] * CurveFit.shape(rate[place], seconds);
      double offC = bins.celsius(i) - expectedC;
      off += offC / SEEN_AFTER;
      sign += offC > 0 ? 1 : -1;
    }
    boolean left =
        Math.abs(sign) == SEEN_AFTER
            && Math.abs(off) > Math.max(LEAST_C, LEAST_SPREADS * spreadC[place]);
    return left ? off : 0;
  }
}
