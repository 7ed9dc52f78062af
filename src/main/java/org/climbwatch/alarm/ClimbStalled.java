package org.climbwatch.alarm;

/**
 * The kiln is meant to climb and does not. Applies while climbing and short of the target only, so
 * it is silent through drying, a hold on purpose and cooling. A standing one goes on in a cooling
 * that nobody has spoken of.
 *
 * @param leastClimbCPerHour °C/h below which the climb counts as stalled
 * @param fromC °C below which the fire is kept low on purpose
 * @param patienceMinutes min for which a turn to reduction may take the climb away
 */
public record ClimbStalled(
    Delays delays, double leastClimbCPerHour, double fromC, double patienceMinutes)
    implements Rule {
  /** Potters look again after 10 to 15 minutes (common practice). */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.CLIMB_STALLED)
          .number("least_climb_c_per_h", 20, 1, 500)
          .number("from_c", 200, 0, 1400)
          .number("patience_min", 20, 0, 240)
          .delays(600, 120)
          .betterSaidBy(AlarmKind.SAGGING, AlarmKind.FALLING)
          .makes(
              set ->
                  new ClimbStalled(
                      set.delays(),
                      set.number("least_climb_c_per_h"),
                      set.number("from_c"),
                      set.number("patience_min")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.CLIMB_STALLED;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    return WeakFire.withoutClimb(situation, standing, fromC)
        .orElseGet(() -> ofClimb(situation, standing));
  }

  private Verdict ofClimb(Situation situation, boolean standing) {
    if (!standing && BodyReduction.perhaps(situation, patienceMinutes)) {
      return Verdict.CLEAR;
    }
    // a standing alarm returns only once the climb is plainly back, half as much again
    double limitCPerHour = leastClimbCPerHour * (standing ? 1.5 : 1);
    return situation.climb().get().cPerHour() < limitCPerHour ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public boolean isSo(Situation situation) {
    return !situation.signalBad()
        && situation.climb().filter(climb -> climb.cPerHour() < leastClimbCPerHour).isPresent();
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: climb %s at %s, less than %s; stalled for %s. The fire gives no more than the kiln"
            + " loses. Check in this order: the flame at every burner; bottle and gauge (frost,"
            + " sinking pressure); regulator and hose; damper and flame at the flue (too much or"
            + " too little air); gas too high. Change one thing a little and wait 10 to 15 min."
            + " If a flame is out: gas off at burner and bottle, do not relight, air the kiln for"
            + " 5 min or longer.%s",
        situation.kiln(),
        situation.probe(),
        situation.climb().map(climb -> Words.perHour(climb.cPerHour())).orElse("unknown"),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "an unknown temperature",
        Words.perHour(leastClimbCPerHour),
        Words.span(heldSeconds),
        situation.tooCold()
            ? " No kiln cools so fast: if the burners burn, look at probe, lead and terminals."
            : "");
  }
}
