package org.climbwatch.alarm;

import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;

/** Readings arrive but carry a fault instead of a temperature. Applies in every phase. */
public record ProbeFault(Delays delays) implements Rule {
  /** A spark at the igniter can give single faults; one that lasts is real. */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_FAULT)
          .delays(10, 10)
          .makes(set -> new ProbeFault(set.delays()));

  /** °C below the end of what the couple tells. */
  private static final double NEAR_THE_END_C = 60;

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
        "%s, probe %s: no temperature for %s: %s. %s%s %s%s",
        situation.kiln(),
        situation.probe(),
        Words.span(heldSeconds),
        fault.plainly(),
        beyondTheCouple(situation, fault),
        FirstChecks.of(fault),
        furtherCheck(fault),
        Words.unwatched(situation, "Until it is back"));
  }

  /** A kiln that runs away leaves the couple's range, too, and that is the graver of the two. */
  private static String beyondTheCouple(Situation situation, Fault fault) {
    OptionalDouble lastC = situation.recentPeakC();
    OptionalDouble endC = situation.meant().coupleEndC();
    return fault == Fault.OUT_OF_RANGE
            && lastC.isPresent()
            && endC.isPresent()
            && lastC.getAsDouble() > endC.getAsDouble() - NEAR_THE_END_C
        ? "The last that was read is "
            + Words.degrees(lastC.getAsDouble())
            + ": THE KILN MAY BE HOTTER than this couple can tell. Go and look; shut the gas at burner"
            + " and bottle if you are not sure. If the kiln is not that hot: "
        : "";
  }

  private static String furtherCheck(Fault fault) {
    return fault == Fault.WIRING || fault == Fault.NO_VALUE ? "Then run check. " : "";
  }
}
