package org.climbwatch.alarm;

import java.util.OptionalDouble;

/**
 * A probe and the one that the firing follows differ by more than a kiln's own unevenness explains:
 * the kiln is uneven, or one of them lies. Each probe that is compared has an alarm of its own, so
 * that an answer to one hides no other.
 *
 * @param limitC °C between two probes
 * @param deadbandC °C below the limit at which it returns
 */
public record ProbesApart(Delays delays, double limitC, double deadbandC) implements Rule {
  /**
   * Top and bottom of a small kiln lie some tens of degrees apart while it climbs (common
   * practice).
   */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBES_APART)
          .number("limit_c", 80, 5, 500)
          .number("deadband_c", 10, 0, 100)
          .delays(300, 120)
          .makes(
              set ->
                  new ProbesApart(set.delays(), set.number("limit_c"), set.number("deadband_c")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBES_APART;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.neighbour().isEmpty()) {
      // what stands from other settings is over; otherwise there is nothing to say
      return standing ? Verdict.NOT_APPLICABLE : Verdict.UNKNOWN;
    }
    OptionalDouble otherC = situation.neighbour().get().temperatureC();
    if (situation.temperatureC().isEmpty() || otherC.isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double dueC = limitC - (standing ? deadbandC : 0);
    return apartC(situation) >= dueC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    Neighbour followed = situation.neighbour().orElseThrow();
    return String.format(
        "%s, probe %s: %s, and probe %s: %s, %s apart for %s. The kiln is uneven, or one of the two"
            + " probes is wrong. Check in this order: whether both tips are where they belong and"
            + " touch nothing; the screws and leads of the one that has changed; damper, burner and"
            + " flame on the colder side. Trust neither of them before you know, look at cones.",
        situation.kiln(),
        followed.probe(),
        Words.degrees(followed.temperatureC().orElseThrow()),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElseThrow()),
        Words.degrees(apartC(situation)),
        Words.span(heldSeconds));
  }

  private static double apartC(Situation situation) {
    OptionalDouble followedC = situation.neighbour().orElseThrow().temperatureC();
    return Math.abs(situation.temperatureC().orElseThrow() - followedC.orElseThrow());
  }
}
