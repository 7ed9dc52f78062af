package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The kiln climbs faster than the ware survives. Suppressed while idle or cooling.
 *
 * <p>The climb has to be over the limit by its own uncertainty.
 *
 * @param dryingLimitCPerHour °C/h while pore water leaves
 * @param limitCPerHour °C/h afterwards
 */
public record ClimbTooFast(Delays delays, double dryingLimitCPerHour, double limitCPerHour)
    implements Rule {
  /** Twice the published climbs for greenware to 120 °C, and above (common practice). */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.CLIMB_TOO_FAST)
          .number("drying_limit_c_per_h", 200, 10, 5000)
          .number("limit_c_per_h", 500, 10, 5000)
          .delays(60, 60)
          .makes(
              set ->
                  new ClimbTooFast(
                      set.delays(),
                      set.number("drying_limit_c_per_h"),
                      set.number("limit_c_per_h")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.CLIMB_TOO_FAST;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    Phase phase = situation.phase();
    if (phase == Phase.IDLE || phase == Phase.COOLING) {
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
    return phase == Phase.DRYING ? dryingLimitCPerHour : limitCPerHour;
  }
}
