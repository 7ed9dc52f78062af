package org.climbwatch.alarm;

/**
 * Two probes of one kiln differ by more than a kiln's own unevenness explains: the kiln is uneven,
 * or one of them lies.
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
      RuleKind.ofFiring(AlarmKind.PROBES_APART)
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
    if (situation.temperatureC().isEmpty() || situation.neighbours().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double dueC = limitC - (standing ? deadbandC : 0);
    return apartC(situation, farthest(situation)) >= dueC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    Neighbour other = farthest(situation);
    return String.format(
        "%s, probe %s: %s, and probe %s: %s, %s apart for %s. The kiln is uneven, or one of the two"
            + " probes is wrong. Check in this order: whether both tips are where they belong and"
            + " touch nothing; the screws and leads of the one that has changed; damper, burner and"
            + " flame on the colder side. Trust neither of them before you know, look at cones.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().getAsDouble()),
        other.probe(),
        Words.degrees(other.temperatureC()),
        Words.degrees(apartC(situation, other)),
        Words.span(heldSeconds));
  }

  private static double apartC(Situation situation, Neighbour other) {
    return Math.abs(situation.temperatureC().getAsDouble() - other.temperatureC());
  }

  private static Neighbour farthest(Situation situation) {
    Neighbour farthest = situation.neighbours().get(0);
    for (Neighbour other : situation.neighbours()) {
      if (apartC(situation, other) > apartC(situation, farthest)) {
        farthest = other;
      }
    }
    return farthest;
  }
}
