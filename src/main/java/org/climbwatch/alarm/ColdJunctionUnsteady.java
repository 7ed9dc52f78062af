package org.climbwatch.alarm;

import java.util.Locale;
import java.util.OptionalDouble;

/**
 * The amplifier warms or cools so fast that its sensor and its terminals are not at one
 * temperature. Applies in every phase.
 *
 * @param limitCPerMinute °C/min over five minutes, up or down
 */
public record ColdJunctionUnsteady(Delays delays, double limitCPerMinute) implements Rule {
  /** A box that its electronics warm after switching on moves by 0.6 °C/min (seen in reports). */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.COLD_JUNCTION_UNSTEADY)
          .number("limit_c_per_min", 2, 0.2, 50)
          .delays(90, 1800)
          .makes(set -> new ColdJunctionUnsteady(set.delays(), set.number("limit_c_per_min")));

  /** Of the limit, under which it returns. */
  private static final double DEADBAND = 0.7;

  @Override
  public AlarmKind kind() {
    return AlarmKind.COLD_JUNCTION_UNSTEADY;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    OptionalDouble cPerMinute = situation.health().coldJunctionCPerMinute();
    if (cPerMinute.isEmpty() || situation.fault().isPresent()) {
      return Verdict.UNKNOWN;
    }
    double due = limitCPerMinute * (standing ? DEADBAND : 1);
    return Math.abs(cPerMinute.getAsDouble()) >= due ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    double cPerMinute = situation.health().coldJunctionCPerMinute().orElse(0);
    return String.format(
        Locale.ROOT,
        "%s, probe %s: the amplifier's terminals %s by %.1f °C a minute for 5 min, now %s. Sun, a"
            + " draught or the flue's breath is on the box; while it moves so fast, its sensor and"
            + " its terminals differ and the kiln's number is off by some degrees. First shade or"
            + " close the box, then move it.",
        situation.kiln(),
        situation.probe(),
        cPerMinute > 0 ? "warm" : "cool",
        Math.abs(cPerMinute),
        Words.degrees(situation.health().coldJunctionC().orElse(0)));
  }
}
