package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The program itself was late: within one boot, and without a restart of the program, no reading
 * was taken for longer than any interval. A device that says nothing gives faults meanwhile, so
 * that it is {@link ReadingsStopped}'s business and not this one's.
 */
public record ReadingsLate(Delays delays) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.READINGS_LATE)
          .delays(0, 0)
          .makes(set -> new ReadingsLate(set.delays()));

  @Override
  public AlarmKind kind() {
    return AlarmKind.READINGS_LATE;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.IDLE) {
      return Verdict.NOT_APPLICABLE;
    }
    return situation.unwatchedS() > 0 ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: this program took no reading for %s, until now, and no alarm could come. The"
            + " machine slept, was stopped or was too busy. First look at the kiln: every burner,"
            + " then cones and colour. Then check what else runs on the machine, its supply"
            + " (undervoltage) and its memory card.",
        situation.kiln(), situation.probe(), Words.span(Math.round(situation.unwatchedS())));
  }
}
