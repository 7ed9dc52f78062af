package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The firing has reached its target. Applies while the fire burns, to a kiln whose target is set; a
 * standing one goes on until the kiln cools.
 */
public record TargetReached(Delays delays) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.TARGET_REACHED)
          .delays(10, 600)
          .makes(set -> new TargetReached(set.delays()));

  /** °C below the target at which a kiln that was there is still there. */
  private static final double DEADBAND_C = 15;

  @Override
  public AlarmKind kind() {
    return AlarmKind.TARGET_REACHED;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    Phase phase = situation.phase();
    boolean burning = phase == Phase.CLIMBING || phase == Phase.HOLDING;
    if (!burning || situation.meant().targetC().isEmpty()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty() || situation.leftKiln()) {
      return Verdict.UNKNOWN;
    }
    double dueC = situation.meant().targetC().getAsDouble() - (standing ? DEADBAND_C : 0);
    return situation.temperatureC().getAsDouble() >= dueC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, the target of %s is reached. Look at the witness cones before you decide:"
            + " they tell heat work, a number does not. Then hold, or shut the gas at burner and"
            + " bottle and close the damper.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElseThrow()),
        Words.degrees(situation.meant().targetC().orElseThrow()));
  }
}
