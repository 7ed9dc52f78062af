package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.firing.Phase;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.Span;

/**
 * The climb will stall short of the target, or bring it later than the potter allows, if the fire
 * burns on as it does. Applies while climbing towards a target only, so it is silent through
 * drying, a hold on purpose, cooling, and once the firing has been at its target. A standing one
 * goes on in a cooling that nobody has spoken of.
 *
 * <p>A potter raises the gas step by step, so most of the way the fire of the moment would not do
 * for the target. That is no stall ahead: the climb must also be about to go.
 *
 * @param leastClimbCPerHour °C/h below which the climb counts as gone
 * @param lookAheadMinutes min within which it must be about to go
 * @param latestArrivalHours h from now that the potter allows to the target
 * @param patienceMinutes min of silence after the climb fell at once: whoever turned the gas or the
 *     damper, for a hold or for reduction, stands beside the kiln
 * @param fromC °C below which the fire is kept low on purpose
 */
public record StallAhead(
    Delays delays,
    double leastClimbCPerHour,
    double lookAheadMinutes,
    double latestArrivalHours,
    double patienceMinutes,
    double fromC)
    implements Rule {
  /** Set on the development half of the ensemble: docs/forecast.md. */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.STALL_AHEAD)
          .number("least_climb_c_per_h", 30, 1, 500)
          .number("look_ahead_min", 30, 5, 240)
          .number("latest_arrival_h", 24, 0.5, 72)
          .number("patience_min", 30, 0, 240)
          .number("from_c", 300, 0, 1400)
          .delays(720, 300)
          .betterSaidBy(AlarmKind.CLIMB_STALLED, AlarmKind.SAGGING, AlarmKind.FALLING)
          .makes(
              set ->
                  new StallAhead(
                      set.delays(),
                      set.number("least_climb_c_per_h"),
                      set.number("look_ahead_min"),
                      set.number("latest_arrival_h"),
                      set.number("patience_min"),
                      set.number("from_c")));

  /** °C short of the target that count as reached; cones, not degrees, end a firing. */
  private static final double NEAR_C = 5;

  /**
   * °C between which bound water leaves and quartz turns: the climb dips and comes back (trade
   * facts: 500 to 650 in a heavy load is no stall; quartz at 573).
   */
  private static final double DIPS_FROM_C = 450;

  private static final double DIPS_TO_C = 650;

  /** A standing alarm returns only once the climb is plainly back, half as much again. */
  private static final double PLAINLY = 1.5;

  @Override
  public AlarmKind kind() {
    return AlarmKind.STALL_AHEAD;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.COOLING && situation.stillStands(standing)) {
      return Verdict.HOLDS;
    }
    if (situation.phase() != Phase.CLIMBING
        || situation.meant().restsAsPlanned(situation.temperatureC())
        || situation.meant().targetC().isEmpty()) {
      return Verdict.NOT_APPLICABLE;
    }
    double targetC = situation.meant().targetC().getAsDouble();
    if (situation.highestC().orElse(0) >= targetC - NEAR_C) {
      return Verdict.NOT_APPLICABLE;
    }
    Optional<Forecast.Known> known = situation.forecast().known();
    if (situation.temperatureC().isEmpty() || known.isEmpty()) {
      return Verdict.UNKNOWN;
    }
    return ahead(known.get(), targetC, standing) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  private boolean ahead(Forecast.Known known, double targetC, boolean standing) {
    if (known.temperatureC() < fromC || known.sinceFallS() < patienceMinutes * 60) {
      return false;
    }
    return levelsOffShort(known, targetC, standing) || tooLate(known);
  }

  private boolean levelsOffShort(Forecast.Known known, double targetC, boolean standing) {
    double plainly = standing ? PLAINLY : 1;
    double leftS = known.latestUnderS(leastClimbCPerHour * plainly);
    boolean dips = known.temperatureC() > DIPS_FROM_C && known.temperatureC() < DIPS_TO_C;
    double withinS = dips ? 0 : lookAheadMinutes * plainly * 60;
    return known.levelC().high() < targetC && leftS <= withinS;
  }

  private boolean tooLate(Forecast.Known known) {
    double earliestS = known.arrivalS().map(Span::low).orElse(0.0);
    // a target that is out of reach for this fire is the other case: not before the climb goes
    return Double.isFinite(earliestS) && earliestS > latestArrivalHours * 3600;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s Seen for %s. The fire will not do for the target as it burns now. Check"
            + " in this order: the flame at every burner; bottle and gauge (frost, sinking"
            + " pressure); regulator and hose; damper and flame at the flue; gas too high. Change"
            + " one thing a little and wait 10 to 15 min. Never heat a bottle. If a flame is out:"
            + " gas off at burner and bottle, do not relight, air the kiln for 5 min or longer.",
        situation.kiln(),
        situation.probe(),
        situation.forecast().known().map(known -> seen(known, situation)).orElse(""),
        Words.span(heldSeconds));
  }

  private String seen(Forecast.Known known, Situation situation) {
    String now =
        String.format(
            "climb %s at %s",
            Words.perHour(situation.climb().map(Climb::cPerHour).orElse(known.climbCPerHour())),
            degrees(situation.temperatureC().orElse(known.temperatureC())));
    String target = degrees(situation.meant().targetC().orElse(Double.NaN));
    if (!(known.levelC().high() < situation.meant().targetC().orElse(0))) {
      return String.format(
          "%s; the target of %s comes in %s at the earliest.",
          now, target, Words.span(Math.round(known.arrivalS().map(Span::low).orElse(0.0))));
    }
    double leftS = known.latestUnderS(leastClimbCPerHour);
    String when =
        leftS > 0
            ? "will be under " + Words.perHour(leastClimbCPerHour) + " within " + span(leftS)
            : "is as good as gone";
    return String.format(
        "%s; it %s, near %s (at most %s), short of the target of %s.",
        now, when, degrees(near(known)), degrees(known.levelC().high()), target);
  }

  /** The level to name: a fire that falls without end in sight is named by where it is. */
  private static double near(Forecast.Known known) {
    return Double.isInfinite(known.levelC().best()) ? known.temperatureC() : known.levelC().best();
  }

  private static String degrees(double celsius) {
    return Words.degrees(celsius);
  }

  private static String span(double seconds) {
    return Words.span(Math.round(seconds));
  }
}
