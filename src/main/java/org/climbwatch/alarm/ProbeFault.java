package org.climbwatch.alarm;

import org.climbwatch.reading.Fault;

/** Readings arrive but carry a fault instead of a temperature. Applies in every phase. */
public record ProbeFault(Delays delays) implements Rule {
  /** A spark at the igniter can give single faults; one that lasts is real. */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_FAULT)
          .delays(10, 10)
          .makes(set -> new ProbeFault(set.delays()));

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_FAULT;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.fault().isEmpty() || !situation.fault().get().wrong()) {
      return Verdict.CLEAR;
    }
    return situation.fault().get().silence() ? Verdict.UNKNOWN : Verdict.HOLDS;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    Fault fault = situation.fault().orElse(Fault.WIRING);
    return String.format(
        "%s, probe %s: no temperature for %s: %s. %s %sUntil it is back the kiln is watched by"
            + " nobody but you: go by cones and colour.",
        situation.kiln(),
        situation.probe(),
        Words.span(heldSeconds),
        fault.plainly(),
        FirstChecks.of(fault),
        furtherCheck(fault));
  }

  private static String furtherCheck(Fault fault) {
    return fault == Fault.WIRING || fault == Fault.NO_VALUE ? "Then run check. " : "";
  }
}
