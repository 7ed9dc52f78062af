package org.climbwatch.alarm;

import java.util.OptionalDouble;

/**
 * The amplifier is hotter than it measures well at. Applies in every phase.
 *
 * @param limitC °C of the cold junction
 * @param deadbandC °C below the limit at which it returns
 */
public record ColdJunctionHot(Delays delays, double limitC, double deadbandC) implements Rule {
  /**
   * The amplifiers' stated errors hold to 85 °C (data sheets of MAX31855 and MAX31856); 70 leaves
   * time to act, and is where common parts beside them end (from memory).
   */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.COLD_JUNCTION_HOT)
          .number("limit_c", 70, 30, 120)
          .number("deadband_c", 3, 0, 50)
          .delays(60, 60)
          .makes(
              set ->
                  new ColdJunctionHot(
                      set.delays(), set.number("limit_c"), set.number("deadband_c")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.COLD_JUNCTION_HOT;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    OptionalDouble coldJunctionC = situation.health().coldJunctionC();
    if (coldJunctionC.isEmpty() || situation.fault().isPresent()) {
      return Verdict.UNKNOWN;
    }
    double dueC = limitC - (standing ? deadbandC : 0);
    return coldJunctionC.getAsDouble() >= dueC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: the amplifier's terminals are at %s, %s or more, for %s. Its errors grow, the"
            + " kiln's number with them, and beyond 85 °C no data sheet promises anything. First"
            + " move the box away from the kiln and out of what rises from the flue, or put a"
            + " shield between; leave the lead as it is, extension wire is made for it.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.health().coldJunctionC().orElse(0)),
        Words.degrees(limitC),
        Words.span(heldSeconds));
  }
}
