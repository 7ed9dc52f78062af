package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The readings shiver more than a flame makes them. Raised while a firing is on. While it stands,
 * no climb is judged, and a fall only by the middle of each minute.
 *
 * @param limitC °C, standard deviation from one reading to the next
 */
public record ProbeNoisy(Delays delays, double limitC) implements Rule {
  /**
   * Sheathed couples in gas flames showed 0.4 to 1.4 °C, bare ones up to 1.7, and 4.9 in the flame
   * itself, which hangs together from one second to the next (NIST gas-burner fires).
   */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_NOISY)
          .number("limit_c", 4, 0.5, 100)
          .delays(45, 120)
          .makes(set -> new ProbeNoisy(set.delays(), set.number("limit_c")));

  /** Of the limit, under which it returns. */
  private static final double DEADBAND = 0.7;

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_NOISY;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.IDLE && !standing) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.health().noiseC().isEmpty() || situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double due = limitC * (standing ? DEADBAND : 1);
    return situation.health().noiseC().getAsDouble() >= due ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: readings shiver by %s around %s from one to the next for %s; a flame gives"
            + " under 2 °C. Something electrical gets in, or a contact is bad. First check the"
            + " screws at amplifier and probe head; then whether it stops with the igniter, a motor"
            + " or a charger switched off; then the lead (twisted, shielded, away from mains) and"
            + " the small capacitor at the amplifier's input. Meanwhile climb and stall are not"
            + " judged and a lost flame shows minutes late: look at the burners often.",
        situation.kiln(),
        situation.probe(),
        Words.fineDegrees(situation.health().noiseC().orElse(0)),
        Words.degrees(situation.temperatureC().orElse(0)),
        Words.span(heldSeconds));
  }
}
