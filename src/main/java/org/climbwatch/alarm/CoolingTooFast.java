package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The kiln cools faster than the ware survives. Applies while cooling and between the two
 * temperatures, where quartz and cristobalite shrink; silent above, where glaze is soft yet.
 *
 * @param limitCPerHour °C/h, as a positive number
 * @param quartzLimitCPerHour °C/h within 25 °C of 573 °C
 * @param fromC °C below which it looks
 * @param toC °C above which it looks
 */
public record CoolingTooFast(
    Delays delays, double limitCPerHour, double quartzLimitCPerHour, double fromC, double toC)
    implements Rule {
  /**
   * A shut fibre kiln falls by 200 to 400 °C/h at first, a light one by more than 500 (common
   * practice); above 800 something is open. Stoneware wants less: set it.
   */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.COOLING_TOO_FAST)
          .number("limit_c_per_h", 800, 10, 5000)
          .number("quartz_limit_c_per_h", 800, 10, 5000)
          .number("from_c", 700, 50, 1400)
          .number("to_c", 200, 20, 1400)
          .delays(120, 300)
          .makes(
              set ->
                  new CoolingTooFast(
                      set.delays(),
                      set.number("limit_c_per_h"),
                      set.number("quartz_limit_c_per_h"),
                      set.number("from_c"),
                      set.number("to_c")));

  /** The low to high inversion of quartz: facts of the trade, published for sanitary ware. */
  private static final double QUARTZ_C = 573;

  private static final double AROUND_C = 25;

  @Override
  public AlarmKind kind() {
    return AlarmKind.COOLING_TOO_FAST;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() != Phase.COOLING) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.signalBad()
        || situation.climb().isEmpty()
        || situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double temperatureC = situation.temperatureC().getAsDouble();
    if (temperatureC > fromC || temperatureC < toC) {
      return Verdict.CLEAR;
    }
    var climb = situation.climb().get();
    double sureCPerHour = -climb.cPerHour() - (standing ? 0 : climb.uncertaintyCPerHour());
    return sureCPerHour > limitCPerHour(temperatureC) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    double temperatureC = situation.temperatureC().orElse(QUARTZ_C);
    return String.format(
        "%s, probe %s: cooling %s at %s, where %s is the limit; too fast for %s. Ware may crack (dunt), above all"
            + " around 573 °C and 220 °C. First check that damper, spy holes and door are shut;"
            + " leave them so.",
        situation.kiln(),
        situation.probe(),
        situation.climb().map(climb -> Words.perHour(-climb.cPerHour())).orElse("fast"),
        Words.degrees(temperatureC),
        Words.perHour(limitCPerHour(temperatureC)),
        Words.span(heldSeconds));
  }

  private double limitCPerHour(double temperatureC) {
    return Math.abs(temperatureC - QUARTZ_C) <= AROUND_C ? quartzLimitCPerHour : limitCPerHour;
  }
}
