package org.climbwatch.alarm;

/** The kiln is hotter than it or its ware may get. Applies in every phase, also when idle. */
public record OverTemperature(Settings settings) implements Rule {
  /**
   * @param limitC °C at which the alarm is due, 50 to 1800
   * @param deadbandC °C below the limit at which it returns, 0 to 100
   */
  public record Settings(boolean enabled, double limitC, double deadbandC, Delays delays) {
    /** A little above cone 10, where a Type K couple is at its end (common practice). */
    public static final Settings DEFAULT = new Settings(true, 1300, 5, Delays.ofSeconds(5, 30));

    public Settings {
      Limits.require(limitC, 50, 1800, "limitC");
      Limits.require(deadbandC, 0, 100, "deadbandC");
    }
  }

  @Override
  public AlarmKind kind() {
    return AlarmKind.OVER_TEMPERATURE;
  }

  @Override
  public Delays delays() {
    return settings.delays();
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (!settings.enabled()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double limitC = standing ? settings.limitC() - settings.deadbandC() : settings.limitC();
    return situation.temperatureC().getAsDouble() >= limitC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, at or above the limit of %s for %s. More heat than the kiln or the"
            + " ware should get. First turn the gas down or off; then check the witness cones and"
            + " the probe. This program closes no valve.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElse(settings.limitC())),
        Words.degrees(settings.limitC()),
        Words.span(heldSeconds));
  }
}
