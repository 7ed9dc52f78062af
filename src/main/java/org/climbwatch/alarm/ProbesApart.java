package org.climbwatch.alarm;

/**
 * Two probes of one kiln differ by more than a kiln's own unevenness explains: the kiln is uneven,
 * or one of them lies.
 */
public record ProbesApart(Settings settings) implements Rule {
  /**
   * @param limitC °C between two probes, 5 to 500
   * @param deadbandC °C below the limit at which it returns, 0 to 100
   */
  public record Settings(boolean enabled, double limitC, double deadbandC, Delays delays) {
    /**
     * Top and bottom of a small kiln lie some tens of degrees apart while it climbs (common
     * practice).
     */
    public static final Settings DEFAULT = new Settings(true, 80, 10, Delays.ofSeconds(300, 120));

    public Settings {
      Limits.require(limitC, 5, 500, "limitC");
      Limits.require(deadbandC, 0, 100, "deadbandC");
    }
  }

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBES_APART;
  }

  @Override
  public Delays delays() {
    return settings.delays();
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (!settings.enabled()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty() || situation.neighbours().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double limitC = settings.limitC() - (standing ? settings.deadbandC() : 0);
    return apartC(situation, farthest(situation)) >= limitC ? Verdict.HOLDS : Verdict.CLEAR;
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
