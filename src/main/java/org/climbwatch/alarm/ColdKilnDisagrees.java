package org.climbwatch.alarm;

import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;

/**
 * A kiln that has lain cold and still for three hours does not show the temperature of the
 * amplifier beside it. Applies while idle.
 *
 * <p>A kiln still warm from yesterday keeps cooling and so is not still; a box that its own
 * electronics warm lies above the kiln, so the limit below is the wider one.
 *
 * @param aboveC °C that the probe may show above its cold junction
 * @param belowC °C that it may show below
 */
public record ColdKilnDisagrees(Delays delays, double aboveC, double belowC) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.COLD_KILN_DISAGREES)
          .number("above_c", 10, 3, 100)
          .number("below_c", 20, 3, 100)
          .delays(0, 0)
          .makes(
              set ->
                  new ColdKilnDisagrees(
                      set.delays(), set.number("above_c"), set.number("below_c")));

  /** °C: what lies farther off is no lead's worth but a fire, a pilot perhaps. */
  private static final double MOST_C = 40;

  @Override
  public AlarmKind kind() {
    return AlarmKind.COLD_KILN_DISAGREES;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() != Phase.IDLE) {
      return Verdict.NOT_APPLICABLE;
    }
    OptionalDouble offsetC = situation.health().restOffsetC();
    if (offsetC.isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double offset = offsetC.getAsDouble();
    return Math.abs(offset) <= MOST_C && (offset > aboveC || offset < -belowC)
        ? Verdict.HOLDS
        : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    double offsetC = situation.health().restOffsetC().orElse(0);
    return String.format(
        "%s, probe %s: the kiln has lain still for 3 h, and the probe shows %s, %s %s the amplifier"
            + " at %s. Cold, both should be the room's. Likely a lead that is wired the wrong way"
            + " round at both ends, a lead of another type, or copper in its place: then it is"
            + " wrong by about that much in the firing, too. First check + and − at the probe's"
            + " head and at the amplifier, then the lead's colours. If a pilot burns, or the box"
            + " is warmed by what is in it, this is no fault: raise the limit.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElse(0)),
        Words.fineDegrees(offsetC),
        offsetC > 0 ? "above" : "below",
        Words.degrees(situation.health().coldJunctionC().orElse(0)));
  }
}
