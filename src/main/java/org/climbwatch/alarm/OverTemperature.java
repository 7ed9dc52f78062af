package org.climbwatch.alarm;

/**
 * The kiln is hotter than it or its ware may get. Applies in every phase, also when idle.
 *
 * @param limitC °C at which the alarm is due
 * @param deadbandC °C below the limit at which it returns
 */
public record OverTemperature(Delays delays, double limitC, double deadbandC) implements Rule {
  /** A little above cone 10, where a Type K couple is at its end (common practice). */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.OVER_TEMPERATURE)
          .number("limit_c", 1300, 50, 1800)
          .number("deadband_c", 5, 0, 100)
          .delays(5, 30)
          .makes(
              set ->
                  new OverTemperature(
                      set.delays(), set.number("limit_c"), set.number("deadband_c")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.OVER_TEMPERATURE;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double dueC = standing ? limitC - deadbandC : limitC;
    return situation.temperatureC().getAsDouble() >= dueC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, at or above the limit of %s for %s. More heat than the kiln or the"
            + " ware should get. First turn the gas down or off; then check the witness cones and"
            + " the probe. This program closes no valve.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElse(limitC)),
        Words.degrees(limitC),
        Words.span(heldSeconds));
  }
}
