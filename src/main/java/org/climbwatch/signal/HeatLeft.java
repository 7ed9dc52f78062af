package org.climbwatch.signal;

import java.util.Optional;
import org.climbwatch.reading.Moment;

/**
 * How much heat a kiln must still have, by the hottest that was read of it: what reads colder is
 * the number of something else, as of a lead that has shorted. Whoever believes it takes a burning
 * kiln for a cold one.
 */
public final class HeatLeft {
  /** °C that readings are off, and a probe cools faster than its kiln. */
  private static final double SLACK_C = 25;

  /** °C below which a hat is lifted (common practice): the reading then falls at once. */
  private static final double LIFTED_C = 150;

  private double leastC = Double.NEGATIVE_INFINITY;
  private Optional<Moment> at = Optional.empty();

  /** Nothing is known any more, as after time of which nobody knows how long it was. */
  public void forget() {
    leastC = Double.NEGATIVE_INFINITY;
    at = Optional.empty();
  }

  /**
   * Takes a temperature that is no spike.
   *
   * @param celsius °C
   * @return whether the kiln can have come to it; what it lost over a restart of the machine is not
   *     known
   */
  public boolean canBe(Moment now, double celsius) {
    if (at.isPresent() && !at.get().sameBoot(now)) {
      forget();
    }
    // what is no colder is the new bound, however far the old one has come down
    if (at.isPresent() && celsius < leastC && leastC > Cooling.ROOM_C) {
      leastC = Cooling.coolestC(leastC, now.millisSince(at.get()) / 1000.0);
    }
    leastC = Math.max(leastC, celsius);
    at = Optional.of(now);
    return leastC < LIFTED_C || celsius >= leastC - SLACK_C;
  }
}
