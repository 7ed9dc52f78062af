package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The kiln climbs faster than the ware survives. Suppressed while idle or cooling.
 *
 * <p>The climb has to be over the limit by its own uncertainty.
 */
public record ClimbTooFast(Settings settings) implements Rule {
  /**
   * @param dryingLimitCPerHour °C/h while pore water leaves, 10 to 5000
   * @param limitCPerHour °C/h afterwards, 10 to 5000
   */
  public record Settings(
      boolean enabled, double dryingLimitCPerHour, double limitCPerHour, Delays delays) {
    /** Twice the published climbs for greenware to 120 °C, and above (common practice). */
    public static final Settings DEFAULT = new Settings(true, 200, 500, Delays.ofSeconds(60, 60));

    public Settings {
      Limits.require(dryingLimitCPerHour, 10, 5000, "dryingLimitCPerHour");
      Limits.require(limitCPerHour, 10, 5000, "limitCPerHour");
    }
  }

  @Override
  public AlarmKind kind() {
    return AlarmKind.CLIMB_TOO_FAST;
  }

  @Override
  public Delays delays() {
    return settings.delays();
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    Phase phase = situation.phase();
    if (!settings.enabled() || phase == Phase.IDLE || phase == Phase.COOLING) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.climb().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    var climb = situation.climb().get();
    double sureCPerHour = climb.cPerHour() - (standing ? 0 : climb.uncertaintyCPerHour());
    return sureCPerHour > limitCPerHour(phase) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    String risk =
        situation.phase() == Phase.DRYING
            ? "Steam may burst the ware."
            : "The ware may crack, and carbon may not burn out.";
    return String.format(
        "%s, probe %s: climbing %s at %s, faster than %s for %s. %s First turn the gas down a"
            + " little and look at the flame; then check that the damper has not been shut.",
        situation.kiln(),
        situation.probe(),
        situation.climb().map(climb -> Words.perHour(climb.cPerHour())).orElse("fast"),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "an unknown temperature",
        Words.perHour(limitCPerHour(situation.phase())),
        Words.span(heldSeconds),
        risk);
  }

  private double limitCPerHour(Phase phase) {
    return phase == Phase.DRYING ? settings.dryingLimitCPerHour() : settings.limitCPerHour();
  }
}
