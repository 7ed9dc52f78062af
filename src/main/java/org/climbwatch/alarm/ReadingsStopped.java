package org.climbwatch.alarm;

import org.climbwatch.reading.Fault;

/** Nothing arrives from the probe's device. Applies in every phase. */
public record ReadingsStopped(Delays delays) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.READINGS_STOPPED)
          .delays(10, 10)
          .makes(set -> new ReadingsStopped(set.delays()));

  @Override
  public AlarmKind kind() {
    return AlarmKind.READINGS_STOPPED;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    return situation.fault().map(Fault::silence).orElse(false) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    long silent = (long) situation.silentS().orElse(heldSeconds);
    boolean known = situation.silentS().isPresent();
    return String.format(
        "%s, probe %s: %s for %s%s. The plug is out, the amplifier has lost its supply, or its"
            + " program hangs. First check plug and cable at both ends, then the supply. %s",
        situation.kiln(),
        situation.probe(),
        situation.fault().orElse(Fault.NO_ANSWER).plainly(),
        known ? "" : "at least ",
        Words.span(silent),
        Words.unwatched(situation, "Until it is back"));
  }
}
