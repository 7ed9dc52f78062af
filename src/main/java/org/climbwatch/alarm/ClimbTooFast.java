package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The kiln climbs faster than the ware survives at the temperature it is at: steam, then what burns
 * out, then quartz, then the open range, then the last stretch where glaze melts. Suppressed while
 * idle or cooling.
 *
 * <p>The climb has to be over the limit by its own uncertainty.
 *
 * @param limits the ranges and their limits
 */
public record ClimbTooFast(Delays delays, Limits limits) implements Rule {
  /**
   * °C/h, each for its range.
   *
   * @param drying while pore water leaves
   * @param burnout from there to 540 °C: organics and bound water
   * @param quartz from 540 to 600 °C: the inversion at 573 °C
   * @param open above
   * @param glaze from {@code glazeFromC} °C on
   */
  record Limits(
      double drying, double burnout, double quartz, double open, double glaze, double glazeFromC) {}

  /** Twice the published climbs for greenware to 120 °C, and above (common practice). */
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.CLIMB_TOO_FAST)
          .number("drying_limit_c_per_h", 200, 10, 5000)
          .number("burnout_limit_c_per_h", 500, 10, 5000)
          .number("quartz_limit_c_per_h", 500, 10, 5000)
          .number("limit_c_per_h", 500, 10, 5000)
          .number("glaze_limit_c_per_h", 500, 10, 5000)
          .number("glaze_from_c", 1100, 600, 1400)
          .delays(60, 60)
          .makes(set -> new ClimbTooFast(set.delays(), limits(set)));

  private static final double QUARTZ_FROM_C = 540;
  private static final double QUARTZ_TO_C = 600;

  /** °C below the highest of the firing by which it has surely been higher, and not long ago. */
  private static final double BACK_C = 3;

  /**
   * Noises that it must have been higher besides: the highest of many is itself some noises high.
   */
  private static final double BACK_NOISES = 8;

  /** °C below it at which ware has cooled so far that it is heated anew. */
  private static final double FAR_BELOW_C = 150;

  private static Limits limits(RuleSettings set) {
    return new Limits(
        set.number("drying_limit_c_per_h"),
        set.number("burnout_limit_c_per_h"),
        set.number("quartz_limit_c_per_h"),
        set.number("limit_c_per_h"),
        set.number("glaze_limit_c_per_h"),
        set.number("glaze_from_c"));
  }

  @Override
  public AlarmKind kind() {
    return AlarmKind.CLIMB_TOO_FAST;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    Phase phase = situation.phase();
    if (phase == Phase.IDLE || phase == Phase.COOLING) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.signalBad() || situation.climb().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    var climb = situation.climb().get();
    double sureCPerHour = climb.cPerHour() - (standing ? 0 : climb.uncertaintyCPerHour());
    boolean fast = sureCPerHour > limitCPerHour(situation) && !hasEased(situation);
    return fast && !comesBack(situation) ? Verdict.HOLDS : Verdict.CLEAR;
  }

  /**
   * Whether the last moments are surely slow again. The climb over the minutes before is then that
   * of a kiln that came back behind a door, and is by now above where it was.
   */
  private boolean hasEased(Situation situation) {
    return situation
        .quickClimb()
        .filter(quick -> quick.cPerHour() + quick.uncertaintyCPerHour() < limitCPerHour(situation))
        .isPresent();
  }

  /**
   * Whether the kiln only comes back to where it has just been, as behind a door that was opened to
   * draw ware: the ware has been through all that a fast climb could do to it.
   */
  private static boolean comesBack(Situation situation) {
    if (situation.temperatureC().isEmpty() || situation.highestC().isEmpty()) {
      return false;
    }
    double temperatureC = situation.temperatureC().getAsDouble();
    double highestC = situation.highestC().getAsDouble();
    double belowC = highestC - temperatureC;
    double surelyC = BACK_C + BACK_NOISES * situation.health().noiseC().orElse(0);
    // peak against peak is free of noise, but for minutes the last one is that of before the door
    boolean higherBefore = situation.recentPeakC().orElse(highestC) < highestC - BACK_C;
    return temperatureC > QUARTZ_TO_C && belowC < FAR_BELOW_C && (higherBefore || belowC > surelyC);
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: climbing %s at %s, where %s is the limit; too fast for %s. %s First turn the gas down a"
            + " little and look at the flame; then check that the damper has not been shut.",
        situation.kiln(),
        situation.probe(),
        situation.climb().map(climb -> Words.perHour(climb.cPerHour())).orElse("fast"),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "an unknown temperature",
        Words.perHour(limitCPerHour(situation)),
        Words.span(heldSeconds),
        risk(situation));
  }

  private double limitCPerHour(Situation situation) {
    double temperatureC = situation.temperatureC().orElse(QUARTZ_TO_C);
    if (situation.phase() == Phase.DRYING) {
      return limits.drying();
    }
    if (temperatureC < QUARTZ_FROM_C) {
      return limits.burnout();
    }
    if (temperatureC < QUARTZ_TO_C) {
      return limits.quartz();
    }
    return temperatureC >= limits.glazeFromC() ? limits.glaze() : limits.open();
  }

  private String risk(Situation situation) {
    double temperatureC = situation.temperatureC().orElse(QUARTZ_TO_C);
    if (situation.phase() == Phase.DRYING) {
      return "Steam may burst the ware.";
    }
    if (temperatureC < QUARTZ_TO_C) {
      return "The ware may crack, and carbon may not burn out.";
    }
    return temperatureC >= limits.glazeFromC()
        ? "The target may be overshot before the cones show it, and glaze may blister."
        : "Carbon may not burn out, and the body may bloat.";
  }
}
