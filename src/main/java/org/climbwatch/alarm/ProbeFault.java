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
    if (situation.fault().isEmpty()) {
      return Verdict.CLEAR;
    }
    return situation.fault().get().silence() ? Verdict.UNKNOWN : Verdict.HOLDS;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    Fault fault = situation.fault().orElse(Fault.WIRING);
    return String.format(
        "%s, probe %s: no temperature for %s: %s. %s Until it is back the kiln is watched by"
            + " nobody but you: go by cones and colour.",
        situation.kiln(),
        situation.probe(),
        Words.span(heldSeconds),
        fault.plainly(),
        firstChecks(fault));
  }

  private static String firstChecks(Fault fault) {
    return switch (fault) {
      case OPEN_CIRCUIT ->
          "A screw is loose or the couple has broken. First check the screws at the amplifier and"
              + " at the probe's head.";
      case SHORT_TO_GROUND ->
          "A wire touches the kiln's metal or the ground of the box; a very hot sheath or tube"
              + " conducts, too. First check the lead where it passes the kiln's shell, then the"
              + " probe's head, then whether the amplifier's board ties − to ground.";
      case SHORT_TO_SUPPLY ->
          "A wire touches a terminal or pin that carries the amplifier's supply, or the terminals"
              + " are wet. First switch the box off, then check its terminals for loose strands and"
              + " damp; if it comes back with the probe unscrewed and + and − bridged, the"
              + " amplifier is broken.";
      case OUT_OF_RANGE ->
          "The leads may be reversed, or the type set wrongly. First check + and − at the"
              + " amplifier.";
      case WIRING -> "First check the amplifier's supply and its data wires, then run check.";
      case NO_VALUE ->
          "First run check: it shows the device's own error, such as a register it does not have.";
      case GARBLED -> "First check the speed set for the port, and that nothing else uses it.";
      case NO_ANSWER, DEVICE_GONE -> "First check plug and supply of the amplifier.";
    };
  }
}
