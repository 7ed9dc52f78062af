package org.climbwatch.signal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Makes level, time constant and arrival, each with its interval, of a fit: every rate of its list
 * says where the fire would go, once with losses that grow evenly with temperature and once with
 * losses that grow as radiation does, and is counted by its weight.
 */
final class Heading {
  private static final double KELVIN = 273.15;

  /** Of the standard error: a three-point stand-in for a normal spread (Gauss-Hermite). */
  private static final double[] OFFSETS = {-1.732, 0, 1.732};

  private static final double[] SHARES = {1 / 6.0, 2 / 3.0, 1 / 6.0};

  /** Left out at either end. */
  private static final double TAIL = 0.05;

  /** °C/h below which two figures cannot be told apart. */
  private static final double FLAT_C_PER_S = 1 / 3600.0;

  /** Of a rate's weight: for the half way to each neighbour, where the true rate may lie. */
  private static final double BETWEEN = 1 / 6.0;

  private final WeightedValues levels = new WeightedValues(CurveFit.RATES.length * 10);
  private final WeightedValues arrivals = new WeightedValues(CurveFit.RATES.length * 10);
  private final WeightedValues constants = new WeightedValues(CurveFit.RATES.length);

  /**
   * @param sinceFallS s since the fire was turned down or sank at once, infinite if never seen
   */
  Forecast of(CurveFit fit, OptionalDouble targetC, double sinceFallS) {
    levels.clear();
    arrivals.clear();
    constants.clear();
    double nowC = 0;
    double climb = 0;
    for (int k = 0; k < CurveFit.RATES.length; k++) {
      nowC += fit.weight[k] * fit.temperatureC[k];
      climb += fit.weight[k] * fit.climbCPerS[k];
    }
    boolean shortOf = targetC.isPresent() && targetC.getAsDouble() > nowC;
    double wayC = shortOf ? targetC.getAsDouble() - nowC : Double.NaN;
    for (int k = 0; k < CurveFit.RATES.length; k++) {
      if (fit.weight[k] > 1e-4) {
        weigh(fit, k, nowC, wayC);
      }
    }
    Optional<Span> arrival = shortOf ? Optional.of(arrivals.span(TAIL)) : Optional.empty();
    Span level = levels.span(TAIL);
    Span constant = constants.span(TAIL);
    return new Forecast.Known(
        nowC, climb * 3600, level, betweenRates(constant), arrival, sinceFallS);
  }

  /** The list of rates is coarse: the true one may lie between two of them. */
  private static Span betweenRates(Span constantS) {
    return new Span(
        constantS.low() / CurveFit.STEP, constantS.best(), constantS.high() * CurveFit.STEP);
  }

  private void weigh(CurveFit fit, int k, double nowC, double wayC) {
    double rate = CurveFit.RATES[k];
    constants.add(rate > 0 ? 1 / rate : Double.POSITIVE_INFINITY, fit.weight[k]);
    boolean levelled = rate > 0;
    double own = levelled ? 1 - 2 * BETWEEN : 1;
    for (int i = 0; i < OFFSETS.length; i++) {
      double climb = fit.climbCPerS[k] + OFFSETS[i] * fit.climbErrorCPerS[k];
      double riseC = levelled ? climb / rate : endless(climb);
      count(climb, riseC, nowC, wayC, own * fit.weight[k] * SHARES[i]);
    }
    if (levelled) {
      between(fit, k, k - 1, nowC, wayC);
      between(fit, k, k + 1, nowC, wayC);
    }
  }

  /** The list of rates is coarse: half way to the next, or none beyond the last one. */
  private void between(CurveFit fit, int k, int next, double nowC, double wayC) {
    boolean listed = next < CurveFit.RATES.length && CurveFit.RATES[next] > 0;
    double rate = listed ? Math.sqrt(CurveFit.RATES[k] * CurveFit.RATES[next]) : CurveFit.RATES[k];
    double climb = listed ? (fit.climbCPerS[k] + fit.climbCPerS[next]) / 2 : fit.climbCPerS[k];
    count(climb, climb / rate, nowC, wayC, BETWEEN * fit.weight[k]);
  }

  private void count(double climb, double riseC, double nowC, double wayC, double weight) {
    double radiantRiseC = Double.isInfinite(riseC) ? riseC : radiantRiseC(nowC, riseC);
    levels.add(nowC + riseC, weight / 2);
    levels.add(nowC + radiantRiseC, weight / 2);
    if (!Double.isNaN(wayC)) {
      arrivals.add(seconds(climb, riseC, wayC), weight / 2);
      arrivals.add(seconds(climb, radiantRiseC, wayC), weight / 2);
    }
  }

  private static double endless(double climb) {
    return Math.abs(climb) < FLAT_C_PER_S ? 0 : Math.copySign(Double.POSITIVE_INFINITY, climb);
  }

  /**
   * Losses that follow the fourth power of the absolute temperature, the same slope of them now.
   */
  private static double radiantRiseC(double nowC, double evenRiseC) {
    double nowK = nowC + KELVIN;
    double balance = 1 + 4 * evenRiseC / nowK;
    return balance <= 0 ? evenRiseC : nowK * Math.sqrt(Math.sqrt(balance)) - nowK;
  }

  private static double seconds(double climb, double riseC, double wayC) {
    if (climb <= 0 || riseC <= wayC) {
      return Double.POSITIVE_INFINITY;
    }
    if (Double.isInfinite(riseC)) {
      return wayC / climb;
    }
    double constantS = riseC / climb;
    return -constantS * StrictMath.log(1 - wayC / riseC);
  }
}
