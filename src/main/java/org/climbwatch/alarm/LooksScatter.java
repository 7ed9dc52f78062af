package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The looks within one reading scatter more than a flame makes them, though their middle may be as
 * calm as ever: something electrical gets in. Raised while a firing is on; left to {@link
 * ProbeNoisy} where the readings themselves shiver. Nothing else is judged differently while it
 * stands.
 *
 * @param limitC °C, standard deviation of a look
 */
public record LooksScatter(Delays delays, double limitC) implements Rule {
  /**
   * A flame's own movement takes about a second (NIST gas-burner fires; see {@link ProbeNoisy}), so
   * within one it shows less than the 4 °C taken there.
   */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.LOOKS_SCATTER)
          .number("limit_c", 4, 0.5, 100)
          .delays(120, 300)
          .makes(set -> new LooksScatter(set.delays(), set.number("limit_c")));

  /** Of the limit, under which it returns. */
  private static final double DEADBAND = 0.7;

  @Override
  public AlarmKind kind() {
    return AlarmKind.LOOKS_SCATTER;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.IDLE || situation.signalBad()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.health().lookSpreadC().isEmpty() || situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double due = limitC * (standing ? DEADBAND : 1);
    return situation.health().lookSpreadC().getAsDouble() >= due ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: within a single reading the looks scatter by %s around %s, for %s; a flame"
            + " gives under 2 °C. The middle that is kept moves by %s from one reading to the next,"
            + " so the curve still holds. Mains hum or a spark gets into the lead. First check"
            + " whether it stops with the igniter, a motor or a charger switched off; then the lead"
            + " (twisted, shielded, away from mains, its shield on earth at one end); then the small"
            + " capacitor at the amplifier's input and its mains filter's setting.",
        situation.kiln(),
        situation.probe(),
        Words.fineDegrees(situation.health().lookSpreadC().orElse(0)),
        Words.degrees(situation.temperatureC().orElse(0)),
        Words.span(heldSeconds),
        Words.fineDegrees(situation.health().noiseC().orElse(0)));
  }
}
