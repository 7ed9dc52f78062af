package org.climbwatch.alarm;

/**
 * The probe falls below its cold junction as no cold kiln does: its wires are swapped at the
 * amplifier. Applies in every phase, for such a kiln never seems to be lit. Beside an instrument
 * that tells no cold junction, freezing stands for it.
 *
 * @param fallC °C within an hour
 */
public record ProbeReversed(Delays delays, double fallC) implements Rule {
  /** A kiln at rest moves by less than 15 °C in an hour; a lit one by more (common practice). */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_REVERSED)
          .number("fall_c", 15, 5, 100)
          .delays(60, 60)
          .makes(set -> new ProbeReversed(set.delays(), set.number("fall_c")));

  /** No shed is so cold, nor so much colder than a box in it. */
  private static final double COLDEST_SHED_C = -40;

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_REVERSED;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    if (situation.health().reversal().isEmpty()) {
      return Verdict.CLEAR;
    }
    boolean beyondAnyShed =
        situation.temperatureC().getAsDouble() < COLDEST_SHED_C
            && situation.health().reversal().get().belowC() > -COLDEST_SHED_C;
    boolean falls = situation.health().reversal().get().fallenC() >= fallC;
    return standing || falls || beyondAnyShed ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, %s below %s, and fallen by %s within the hour, for %s. If"
            + " the kiln is lit, the probe's wires are swapped at the amplifier: it falls as the"
            + " kiln heats. First check + and − at the amplifier, then the colours of the lead"
            + " (red is minus in ANSI leads and plus in others). %s",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElse(0)),
        Words.degrees(situation.health().reversal().map(r -> r.belowC()).orElse(0.0)),
        situation.health().coldJunctionC().isPresent() ? "its cold junction" : "freezing",
        Words.degrees(situation.health().reversal().map(r -> r.fallenC()).orElse(0.0)),
        Words.span(heldSeconds),
        Words.unwatched(situation, "Until then"));
  }
}
