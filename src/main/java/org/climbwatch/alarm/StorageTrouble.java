package org.climbwatch.alarm;

/**
 * The record does not reach the disk: full, read-only, broken or locked. Applies in every phase.
 *
 * <p>A single try that fails, as while another program looks into the file, is over before the
 * on-delay.
 */
public record StorageTrouble(Delays delays) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.STORAGE_TROUBLE)
          .delays(30, 60)
          .makes(set -> new StorageTrouble(set.delays()));

  @Override
  public AlarmKind kind() {
    return AlarmKind.STORAGE_TROUBLE;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    return situation.machine().writingTrouble().isEmpty() ? Verdict.CLEAR : Verdict.HOLDS;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: nothing has reached the disk for %s: %s. The kiln is watched as before, but"
            + " readings, notes and alarms wait in memory until the disk takes them; a restart or a"
            + " power cut before that loses them. First leave program and machine running, then mend"
            + " what is named, and write the temperature down by hand until it is.",
        situation.kiln(),
        situation.probe(),
        Words.span(heldSeconds),
        situation.machine().writingTrouble());
  }
}
