package org.climbwatch.signal;

import java.util.Arrays;
import java.util.Optional;

/**
 * Looks for a probe whose wires are swapped at the amplifier: it falls as far below the cold
 * junction as the kiln has risen above it.
 *
 * <p>A kiln in a winter shed also lies below a box that its electronics warm, and a kiln that was
 * opened hot falls there quickly. So it counts only where the probe has fallen more than the cold
 * junction within the hour, and where it has not read warm within half a day: a probe that has read
 * warm is wired the right way round.
 */
final class ReversalWatch {
  private static final long SLOT_MILLIS = 300_000;
  private static final int SLOTS = 12;
  private static final double LEAST_BELOW_C = 10;

  /** °C above the cold junction that only a fired kiln has, and ms for which that proves it. */
  private static final double WARM_C = 30;

  private static final long PROVEN_MILLIS = 43_200_000;

  /** Readings in a row: an igniter's spark comes just when this has to look. */
  private static final int LEAST_WARM = 5;

  private final Spans spans = new Spans(SLOT_MILLIS);
  private final long[] slot = new long[SLOTS];
  private final double[] highestC = new double[SLOTS];
  private final double[] highestColdC = new double[SLOTS];
  private long newest;
  private int warmInARow;
  private boolean everWarm;
  private long warmMillis;

  ReversalWatch() {
    reset();
  }

  /** Forgets the run; that it has read warm is kept. */
  void reset() {
    spans.restart();
    warmInARow = 0;
    Arrays.fill(slot, Long.MIN_VALUE);
  }

  /** Counts from the next reading on; the highest of the hour before stands at its beginning. */
  void countAfresh() {
    double highC = highest(highestC);
    double highColdC = highest(highestColdC);
    reset();
    slot[0] = 0;
    highestC[0] = highC;
    highestColdC[0] = highColdC;
  }

  /** Takes a reading; answers what it says if it lies below the cold junction. */
  Optional<Reversal> look(long millis, double celsius, double coldJunctionC) {
    double aboveC = celsius - coldJunctionC;
    warmInARow = aboveC >= WARM_C ? warmInARow + 1 : 0;
    if (warmInARow >= LEAST_WARM) {
      everWarm = true;
      warmMillis = millis;
    }
    // after a restart of the machine its clock begins anew
    warmMillis = Math.min(warmMillis, millis);
    remember(millis, celsius, coldJunctionC);
    boolean proven = everWarm && millis - warmMillis <= PROVEN_MILLIS;
    return aboveC > -LEAST_BELOW_C || proven
        ? Optional.empty()
        : Optional.of(new Reversal(-aboveC, fallenC(celsius, coldJunctionC)));
  }

  private void remember(long millis, double celsius, double coldJunctionC) {
    long now = spans.number(millis);
    int place = Math.floorMod(now, SLOTS);
    newest = now;
    if (slot[place] != now) {
      slot[place] = now;
      highestC[place] = celsius;
      highestColdC[place] = coldJunctionC;
    } else {
      highestC[place] = Math.max(highestC[place], celsius);
      highestColdC[place] = Math.max(highestColdC[place], coldJunctionC);
    }
  }

  private double fallenC(double celsius, double coldJunctionC) {
    return highest(highestC) - celsius - (highest(highestColdC) - coldJunctionC);
  }

  private double highest(double[] ofSlots) {
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < SLOTS; i++) {
      high = slot[i] > newest - SLOTS ? Math.max(high, ofSlots[i]) : high;
    }
    return high;
  }
}
