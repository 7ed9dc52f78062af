package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The firing is behind its plan. Applies while drying, climbing and holding, where a plan is set.
 *
 * @param limitC °C between plan and kiln
 */
public record BehindPlan(Delays delays, double limitC) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.BEHIND_PLAN)
          .number("limit_c", 75, 5, 500)
          .delays(600, 300)
          .makes(set -> new BehindPlan(set.delays(), set.number("limit_c")));

  /** Share of the limit at which it returns. */
  private static final double RETURNS = 0.7;

  @Override
  public AlarmKind kind() {
    return AlarmKind.BEHIND_PLAN;
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
    return behindC(situation) >= limitC * (standing ? RETURNS : 1) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, %s behind the plan of %s for %s. It will end late and burn more gas. Look"
            + " at the climb: if it is as it should be, let it come and move the plan; if it is low,"
            + " look at flame, bottle, damper in this order, and change one thing a little.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElseThrow()),
        Words.degrees(behindC(situation)),
        Words.degrees(situation.meant().plannedC().orElseThrow()),
        Words.span(heldSeconds));
  }

  private static double behindC(Situation situation) {
    return situation.meant().plannedC().getAsDouble() - situation.temperatureC().getAsDouble();
  }
}
