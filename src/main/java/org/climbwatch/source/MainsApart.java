package org.climbwatch.source;

import java.time.Duration;

/**
 * Chooses how often to look, so that mains hum is met at another phase each time.
 *
 * <p>A tenth of a second holds just 5 cycles of 50 Hz and 6 of 60 Hz: looks so far apart meet the
 * hum always at the same place, and it becomes a steady error that no middle takes out and no
 * spread tells of. At 102 ms the looks of a second go right round the cycle of both.
 *
 * <p>This helps with devices that convert when asked. One that converts by its own clock, as a
 * MAX31855 does, is met by the hum at that clock's pace, whenever it is asked.
 */
final class MainsApart {
  private static final double[] MAINS_HZ = {50, 60};

  /** Cycles by which each look must move on at least. */
  private static final double LEAST_TURN = 0.1;

  private static final long STEP_NANOS = 1_000_000;

  private MainsApart() {}

  /** The shortest time, from a device's own pace on, that is in step with neither mains. */
  static Duration pace(Duration fastest) {
    long nanos = fastest.toNanos();
    while (turn(nanos) < LEAST_TURN - 1e-9) {
      nanos += STEP_NANOS;
    }
    return Duration.ofNanos(nanos);
  }

  private static double turn(long nanos) {
    double least = 1;
    for (double hz : MAINS_HZ) {
      double cycles = hz * nanos / 1e9;
      least = Math.min(least, Math.abs(cycles - Math.rint(cycles)));
    }
    return least;
  }
}
