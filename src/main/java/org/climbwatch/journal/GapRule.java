package org.climbwatch.journal;

/**
 * Whether something is missing between two temperatures: a fault, another boot, or no reading for
 * longer than 30 s and than three intervals.
 *
 * <p>The interval is taken from the readings themselves, since one file holds readings of each
 * second and, from the cold kiln, of each minute.
 */
final class GapRule {
  private static final long SHORTEST_GAP_MS = 30_000;
  private static final int INTERVALS = 3;

  /** The slowest that the journal keeps on purpose. */
  private static final long SLOWEST_MS = 60_000;

  private boolean broken = true;
  private int boot;
  private long ms;
  private long intervalMs = SLOWEST_MS;

  /** Goes on as it was after a temperature. */
  void resumeAfter(int atBoot, long atMs, long atIntervalMs) {
    boot = atBoot;
    ms = atMs;
    intervalMs = atIntervalMs;
    broken = false;
  }

  /** Between the last two temperatures without a fault between them. */
  long intervalMs() {
    return intervalMs;
  }

  /** A look that gave no temperature. */
  void fault() {
    broken = true;
  }

  /** A look that gave one; answers whether a gap lies before it. The first of all has one. */
  boolean good(int atBoot, long atMs) {
    long passedMs = atMs - ms;
    boolean gap =
        broken || atBoot != boot || passedMs > Math.max(SHORTEST_GAP_MS, INTERVALS * intervalMs);
    if (!broken && atBoot == boot) {
      intervalMs = Math.min(SLOWEST_MS, passedMs);
    }
    boot = atBoot;
    ms = atMs;
    broken = false;
    return gap;
  }
}
