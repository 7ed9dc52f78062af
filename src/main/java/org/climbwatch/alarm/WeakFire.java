package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.firing.Phase;

/** What is common to the two alarms of a fire that gives no more than the kiln loses. */
final class WeakFire {
  private WeakFire() {}

  /**
   * The verdict where the climb need not be looked at, or cannot be: outside the climb, where the
   * plan rests, once the target was reached, and below the heat in which the fire is kept low on
   * purpose. A standing alarm goes on in a cooling that nobody has spoken of.
   *
   * @param fromC °C below which it is silent, but for a number that no kiln can have cooled to
   * @return empty where it is the climb that decides
   */
  static Optional<Rule.Verdict> withoutClimb(Situation situation, boolean standing, double fromC) {
    if (situation.phase() == Phase.COOLING && situation.stillStands(standing)) {
      return Optional.of(Rule.Verdict.HOLDS);
    }
    if (situation.phase() != Phase.CLIMBING
        || situation.meant().restsAsPlanned(situation.temperatureC())
        || situation.meant().reached(situation.temperatureC())
        || situation.meant().reached(situation.highestC())) {
      return Optional.of(Rule.Verdict.NOT_APPLICABLE);
    }
    boolean low = situation.temperatureC().orElse(fromC) < fromC && !situation.tooCold();
    if (!standing && low) {
      return Optional.of(Rule.Verdict.CLEAR);
    }
    return situation.signalBad() || situation.climb().isEmpty()
        ? Optional.of(Rule.Verdict.UNKNOWN)
        : Optional.empty();
  }
}
