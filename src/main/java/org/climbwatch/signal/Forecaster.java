package org.climbwatch.signal;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * Estimates from the recent curve where the fire is heading. Knows nothing of the kiln but this:
 * gain is constant while nobody touches the fire, and losses grow with temperature.
 *
 * <p>Every twenty seconds it takes the longest recent stretch that one such curve fits, weighs all
 * time constants by how well they fit, and gives what most of them agree on. What comes after a
 * sudden change is a new curve: the old one is forgotten, and the first minutes, in which the
 * chamber's gas and skin answer, are left out.
 */
public final class Forecaster {
  private static final int SHORTEST = 24;

  /** Bins of the stretches that are tried; the longest that fits is taken. */
  private static final int[] STRETCHES = {SHORTEST, 27, 36, 48, 66, 96, 135, 180};

  /** Bins of the shortest stretch that must not be missing, as they are while a probe fails. */
  private static final int LEAST_FILLED = 16;

  /** How much worse than the shortest stretch a longer one may fit. */
  private static final double MOST_MISFIT = 1.5;

  /** s within which falls count as one, so that a fire that sinks by and by is not for ever new. */
  private static final double ONE_DEED_S = 3600;

  /** °C of misfit that is allowed in any case. */
  private static final double FREE_MISFIT_C = 0.3;

  private static final double NEVER = Double.POSITIVE_INFINITY;

  private final Bins bins = new Bins();
  private final ChangeWatch changes = new ChangeWatch();
  private final CurveSums sums = new CurveSums(STRETCHES);
  private final CurveFit fit = new CurveFit();
  private final Heading heading = new Heading();
  private int settling;
  private boolean changed;
  private OptionalLong fallMillis = OptionalLong.empty();
  private double sinceFallS = NEVER;
  private Forecast forecast = new Forecast.NotYet(Forecast.Reason.TOO_EARLY);

  /**
   * Takes a temperature that is no spike.
   *
   * @param millis monotonic
   * @param targetC °C that the firing is meant to reach
   */
  public void add(long millis, double celsius, OptionalDouble targetC) {
    if (bins.add(millis, celsius)) {
      sinceFallS = fallMillis.isPresent() ? (millis - fallMillis.getAsLong()) / 1000.0 : NEVER;
      look(millis, targetC);
    }
  }

  /** Forgets everything, as when a climb begins. */
  public void reset() {
    fallMillis = OptionalLong.empty();
    sinceFallS = NEVER;
    gap();
  }

  /** Forgets the curve, as after a gap, and not when the fire was turned down. */
  public void gap() {
    bins.clear();
    changes.clear();
    settling = 0;
    changed = false;
    forecast = new Forecast.NotYet(Forecast.Reason.TOO_EARLY, sinceFallS);
  }

  public Forecast forecast() {
    return forecast;
  }

  private void look(long millis, OptionalDouble targetC) {
    lookForChange(millis);
    if (settling > 0) {
      settling--;
      bins.keepNewest(1);
    }
    if (bins.size() < SHORTEST || bins.within(SHORTEST) < LEAST_FILLED) {
      var reason = changed ? Forecast.Reason.CHANGED : Forecast.Reason.TOO_EARLY;
      forecast = new Forecast.NotYet(reason, sinceFallS);
      return;
    }
    fitLongestThatFits();
    changes.remember(fit);
    forecast = heading.of(fit, targetC, sinceFallS);
  }

  private void lookForChange(long millis) {
    double offC = changes.offC(bins);
    if (offC == 0) {
      return;
    }
    bins.keepNewest(ChangeWatch.SEEN_AFTER);
    changes.clear();
    settling = ChangeWatch.SETTLING - ChangeWatch.SEEN_AFTER;
    changed = true;
    if (offC < 0 && sinceFallS > ONE_DEED_S) {
      fallMillis = OptionalLong.of(millis);
      sinceFallS = 0;
    }
  }

  private void fitLongestThatFits() {
    sums.take(bins);
    double originC = bins.celsius(bins.size() - 1);
    fit.lines(sums.of(0), originC);
    double mostC = Math.max(MOST_MISFIT * fit.noiseC, FREE_MISFIT_C);
    int stretch = STRETCHES.length;
    do {
      stretch--;
      fit.lines(sums.of(stretch), originC);
    } while (stretch > 0 && fit.noiseC > mostC);
    fit.weighLines(bins);
  }
}
