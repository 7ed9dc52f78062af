package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The signal has left the kiln: from one reading to the next it stands on another level, and stays
 * there. Applies while a firing is on. Until it is back no phase changes by itself, and neither
 * "target reached" nor "cool enough to open" is taken from it.
 */
public record ProbeLeapt(Delays delays) implements Rule {
  /** A contact that only flickers is {@link ProbeJumps}'s. */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_LEAPT)
          .delays(60, 60)
          .betterSaidBy(AlarmKind.PROBE_JUMPS)
          .makes(set -> new ProbeLeapt(set.delays()));

  /** °C about the amplifier's terminals: what a short near the box reads. */
  private static final double LIKE_TERMINALS_C = 40;

  private static final String SHORTED =
      "It reads like the lead: most likely the two wires touch. First check the lead where it"
          + " passes hot metal or an edge, then the probe's head, then the amplifier's screws.";

  private static final String LOOSE =
      "Most likely a loose screw, a wire that slipped, or wires that touch. First check the screws at"
          + " the probe's head and at the amplifier, then the lead.";

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_LEAPT;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.IDLE) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    return situation.leftKiln() ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public boolean isSo(Situation situation) {
    return situation.leftKiln() && situation.temperatureC().isPresent();
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    double leapC = situation.health().leapC().orElse(0);
    double nowC = situation.temperatureC().orElse(Double.NaN);
    return String.format(
        "%s, probe %s: the signal leapt %s by %s from one reading to the next and reads %s since, for"
            + " %s. No kiln does that: it is not the kiln that is read now, or it was not before."
            + " %s %s If the number is right now, say what the kiln does (\"Climbing again\" or"
            + " \"Holding on purpose\"), and it is believed again.",
        situation.kiln(),
        situation.probe(),
        leapC < 0 ? "down" : "up",
        Words.degrees(Math.abs(leapC)),
        Words.degrees(nowC),
        Words.span(heldSeconds),
        leapC < 0 && nearTerminals(situation, nowC) ? SHORTED : LOOSE,
        Words.unwatched(situation, "Until it is found"));
  }

  private static boolean nearTerminals(Situation situation, double nowC) {
    double terminalsC = situation.health().coldJunctionC().orElse(25);
    return Math.abs(nowC - terminalsC) < LIKE_TERMINALS_C;
  }
}
