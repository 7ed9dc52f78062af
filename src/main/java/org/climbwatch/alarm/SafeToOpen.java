package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * A cooling kiln is cool enough to be opened. Applies while cooling.
 *
 * @param belowC °C
 */
public record SafeToOpen(Delays delays, double belowC) implements Rule {
  /** Makers say 121 °C (250 °F), cautious potters 40 to 95 (common practice). */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.SAFE_TO_OPEN)
          .number("below_c", 95, 30, 200)
          .delays(60, 60)
          .makes(set -> new SafeToOpen(set.delays(), set.number("below_c")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.SAFE_TO_OPEN;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() != Phase.COOLING) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty() || situation.leftKiln() || situation.tooCold()) {
      return Verdict.UNKNOWN;
    }
    return situation.temperatureC().getAsDouble() < belowC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, below %s. Ware can stand the air now. Check first that the gas is shut at"
            + " burner and bottle. Shelves and the ware's core stay hotter than the probe: gloves.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElseThrow()),
        Words.degrees(belowC));
  }
}
