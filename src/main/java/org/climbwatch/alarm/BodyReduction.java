package org.climbwatch.alarm;

/**
 * The turn to reduction, by the look of it: damper in or gas up in the heat where body reduction
 * begins, and the climb is gone at once. Whoever turned it stands beside the kiln. A fire that
 * weakens by and by, as behind a freezing bottle, does not look so.
 */
final class BodyReduction {
  /**
   * °C between which it begins, 900 to 1000 (trade facts: the climb drops, and may fall for an
   * hour), and what a reading is off.
   */
  private static final double FROM_C = 850;

  private static final double TO_C = 1050;

  private BodyReduction() {}

  /** Whether the fire may have been turned to it within so many minutes. */
  static boolean perhaps(Situation situation, double minutes) {
    return situation.temperatureC().isPresent()
        && situation.temperatureC().getAsDouble() >= FROM_C
        && situation.temperatureC().getAsDouble() <= TO_C
        && situation.forecast().sinceFallS() < minutes * 60;
  }
}
