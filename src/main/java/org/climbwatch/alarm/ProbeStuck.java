package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The signal has not moved by a single bit where a hot kiln's must. Applies while a firing is on:
 * soonest while climbing, three times as late while holding and cooling, six times while drying,
 * and three times as late again with an instrument of coarse steps.
 *
 * @param unmovedS s without a move while climbing
 */
public record ProbeStuck(Delays delays, double unmovedS) implements Rule {
  /** A live reading of a hot kiln moves by a step every few seconds (common practice). */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_STUCK)
          .number("unmoved_s", 300, 30, 3600)
          .delays(0, 60)
          .makes(set -> new ProbeStuck(set.delays(), set.number("unmoved_s")));

  /** °C: an instrument that rounds to whole degrees rightly repeats itself for minutes. */
  private static final double COARSE_C = 0.5;

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_STUCK;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.IDLE) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty()) {
      return Verdict.CLEAR;
    }
    double due = standing ? unmovedS : dueS(situation);
    return situation.health().unmovedS() >= due ? Verdict.HOLDS : Verdict.CLEAR;
  }

  private double dueS(Situation situation) {
    double slowness =
        switch (situation.phase()) {
          case IDLE, CLIMBING -> 1;
          case HOLDING, COOLING -> 3;
          case DRYING -> 6;
        };
    return unmovedS * slowness * (situation.health().finestStepC() >= COARSE_C ? 3 : 1);
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: the signal stands at %s and has not moved by a single bit for %s; that of a"
            + " fired kiln always flickers. The amplifier hangs or sends its last value again. First"
            + " check its data wires (chip select above all) and its supply: take the supply off"
            + " and on again. If the number is near that of the room, look for a short along the"
            + " lead. %s",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElse(0)),
        Words.span(Math.round(situation.health().unmovedS())),
        Words.unwatched(situation, "Until it moves"));
  }
}
