package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The firing is ahead of its plan. Applies while drying, climbing and holding, where a plan is set.
 *
 * @param limitC °C between plan and kiln
 */
public record AheadOfPlan(Delays delays, double limitC) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.AHEAD_OF_PLAN)
          .number("limit_c", 75, 5, 500)
          .delays(600, 300)
          .makes(set -> new AheadOfPlan(set.delays(), set.number("limit_c")));

  /** Share of the limit at which it returns. */
  private static final double RETURNS = 0.7;

  @Override
  public AlarmKind kind() {
    return AlarmKind.AHEAD_OF_PLAN;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    Phase phase = situation.phase();
    boolean planned = phase != Phase.IDLE && phase != Phase.COOLING;
    if (!planned || situation.meant().plannedC().isEmpty()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty() || situation.leftKiln()) {
      return Verdict.UNKNOWN;
    }
    return aheadC(situation) >= limitC * (standing ? RETURNS : 1) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, %s ahead of the plan of %s for %s. Thick ware and carbon need their time."
            + " Turn the gas down a little, look again in 10 min.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElseThrow()),
        Words.degrees(aheadC(situation)),
        Words.degrees(situation.meant().plannedC().orElseThrow()),
        Words.span(heldSeconds));
  }

  private static double aheadC(Situation situation) {
    return situation.temperatureC().getAsDouble() - situation.meant().plannedC().getAsDouble();
  }
}
