package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The hold has lasted as long as it was meant to. Applies while holding, where that time is set; it
 * returns when the potter says what comes next.
 */
public record HoldOver(Delays delays) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.HOLD_OVER).delays(0, 0).makes(set -> new HoldOver(set.delays()));

  @Override
  public AlarmKind kind() {
    return AlarmKind.HOLD_OVER;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() != Phase.HOLDING || situation.meant().holdMinutes().isEmpty()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.meant().inPhaseS().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double heldMinutes = situation.meant().inPhaseS().getAsDouble() / 60;
    return heldMinutes >= situation.meant().holdMinutes().getAsDouble()
        ? Verdict.HOLDS
        : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: held for %s; %s were meant. Now at %s. Look at the witness cones; then climb"
            + " on, or shut the gas at burner and bottle and close the damper. Tell the page which.",
        situation.kiln(),
        situation.probe(),
        Words.span(Math.round(situation.meant().inPhaseS().orElse(0))),
        Words.span(Math.round(situation.meant().holdMinutes().orElseThrow() * 60)),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "an unknown temperature");
  }
}
