package org.climbwatch.journal;

import java.util.List;

/**
 * Wall and elapsed time of the inputs of one firing.
 *
 * <p>Elapsed time is monotonic time within a boot. Between boots it is the difference of their wall
 * times; where a clock is plainly wrong (the later boot seems to be earlier, or a week later) the
 * pause is of unknown length and counts nothing. So elapsed time never runs backwards.
 */
final class Timeline {
  private static final long LONGEST_PAUSE_MS = 7 * 24 * 3_600_000L;

  /**
   * What a firing has of one boot.
   *
   * @param wallOffsetMs wall time less monotonic time
   * @param firstMs monotonic time of its first input in the firing
   * @param lastMs of its last
   */
  record Stretch(int boot, long wallOffsetMs, long firstMs, long lastMs) {}

  private final int firstBoot;
  private final Stretch first;
  private final Stretch last;
  private final long[] wallOffsetMs;
  private final long[] elapsedOffsetMs;

  /**
   * @param stretches in the order of their boots, one at least
   * @param originMs monotonic time, in the first boot, of the firing's first reading
   */
  Timeline(List<Stretch> stretches, long originMs) {
    first = stretches.get(0);
    firstBoot = stretches.get(0).boot();
    int boots = stretches.get(stretches.size() - 1).boot() - firstBoot + 1;
    wallOffsetMs = new long[boots];
    elapsedOffsetMs = new long[boots];
    Stretch before = null;
    for (Stretch stretch : stretches) {
      int index = stretch.boot() - firstBoot;
      wallOffsetMs[index] = stretch.wallOffsetMs();
      elapsedOffsetMs[index] =
          before == null
              ? -originMs
              : elapsedMs(before.boot(), before.lastMs())
                  + pauseMs(before, stretch)
                  - stretch.firstMs();
      before = stretch;
    }
    last = before;
  }

  private static long pauseMs(Stretch before, Stretch after) {
    long pauseMs = after.wallOffsetMs() + after.firstMs() - before.wallOffsetMs() - before.lastMs();
    return pauseMs < 0 || pauseMs > LONGEST_PAUSE_MS ? 0 : pauseMs;
  }

  /** Milliseconds since 1970 UTC. */
  long wallMs(int boot, long ms) {
    return wallOffsetMs[boot - firstBoot] + ms;
  }

  /** Milliseconds since the firing's first reading; 0 before it. */
  long elapsedMs(int boot, long ms) {
    return Math.max(0, elapsedOffsetMs[boot - firstBoot] + ms);
  }

  /** Milliseconds since the firing's first input; negative before it, also in an earlier boot. */
  long sinceFirstMs(int boot, long ms) {
    if (boot < firstBoot || (boot == firstBoot && ms < first.firstMs())) {
      return -1;
    }
    return elapsedMs(boot, ms);
  }

  /** Wall time of the first input, ms since 1970 UTC. */
  long startWallMs() {
    return wallMs(first.boot(), first.firstMs());
  }

  /** Wall time of the last input, ms since 1970 UTC. */
  long endWallMs() {
    return wallMs(last.boot(), last.lastMs());
  }

  /** From the first input to the last, ms. */
  long durationMs() {
    return endElapsedMs() - elapsedOffsetMs[0] - first.firstMs();
  }

  /** From the firing's first reading to the last input, ms. */
  long endElapsedMs() {
    return elapsedMs(last.boot(), last.lastMs());
  }
}
