package org.climbwatch.alarm;

import org.climbwatch.signal.Climb;

/**
 * The temperature sinks slowly while it should climb: the mild grade of a fall, beside {@link
 * Falling}. Applies while climbing only and until the target was reached: what sinks then is mostly
 * a kiln that was shut without a word. It comes before a stall has lasted for its ten minutes, and
 * outlasts the dip that a turn to reduction makes.
 *
 * @param sinkCPerHour °C/h, as a positive number, by which it surely sinks
 * @param fromC °C below which the fire is kept low on purpose
 * @param patienceMinutes min for which a turn to reduction may make it sink a little
 */
public record Sagging(Delays delays, double sinkCPerHour, double fromC, double patienceMinutes)
    implements Rule {
  /** Set on the development half of the ensemble of firings. */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.SAGGING)
          .number("sink_c_per_h", 20, 1, 500)
          .number("from_c", 300, 0, 1400)
          .number("patience_min", 20, 0, 240)
          .delays(240, 120)
          .betterSaidBy(AlarmKind.FALLING)
          .makes(
              set ->
                  new Sagging(
                      set.delays(),
                      set.number("sink_c_per_h"),
                      set.number("from_c"),
                      set.number("patience_min")));

  /** How much faster a fire sinks that was not just turned to reduction. */
  private static final double REDUCTION_TIMES = 3;

  @Override
  public AlarmKind kind() {
    return AlarmKind.SAGGING;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    return WeakFire.withoutClimb(situation, standing, fromC)
        .orElseGet(() -> ofClimb(situation, standing));
  }

  private Verdict ofClimb(Situation situation, boolean standing) {
    Climb climb = situation.climb().get();
    // a standing alarm returns only once it sinks no more
    boolean sinks =
        standing
            ? climb.cPerHour() < 0
            : climb.cPerHour() + climb.uncertaintyCPerHour() < -surelyCPerHour(situation);
    return sinks ? Verdict.HOLDS : Verdict.CLEAR;
  }

  private double surelyCPerHour(Situation situation) {
    boolean reduces = BodyReduction.perhaps(situation, patienceMinutes);
    return sinkCPerHour * (reduces ? REDUCTION_TIMES : 1);
  }

  @Override
  public boolean isSo(Situation situation) {
    return !situation.signalBad()
        && situation.climb().filter(climb -> climb.cPerHour() < 0).isPresent();
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: sinking %s at %s, for %s, while it should %s. The fire gives less than"
            + " the kiln loses. Check in this order: the flame at every burner; bottle and gauge"
            + " (frost, sinking pressure); regulator and hose; damper and flame at the flue; gas"
            + " too high; wind. Change one thing a little and wait 10 to 15 min. If a flame is"
            + " out: gas off at burner and bottle, do not relight, air the kiln for 5 min or"
            + " longer.",
        situation.kiln(),
        situation.probe(),
        situation.climb().map(climb -> Words.perHour(-climb.cPerHour())).orElse("slowly"),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "an unknown temperature",
        Words.span(heldSeconds),
        situation.meant().planRests() ? "be at " + planned(situation) : "climb");
  }

  private static String planned(Situation situation) {
    return Words.degrees(situation.meant().plannedC().orElseThrow()) + " by the plan";
  }
}
