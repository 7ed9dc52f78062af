package org.climbwatch.journal;

import java.sql.SQLException;

/**
 * Condenses the temperatures of one probe to one block for each minute that still holds every peak
 * and every gap.
 *
 * <p>A block ends with its minute and at a gap, so that no block spans one. Spikes are left out:
 * they are no temperature of the kiln.
 */
final class Rollup {
  private static final long MINUTE_MS = 60_000;

  /**
   * A run of temperatures within one minute and without a gap.
   *
   * @param gapBefore whether something is missing before its first; true for the first of all
   * @param firstSeq place of its first reading among all inputs
   * @param intervalMs between its last reading and the one before, for the {@link GapRule}
   */
  record Block(
      long firstSeq,
      long lastSeq,
      int boot,
      int probe,
      boolean gapBefore,
      long intervalMs,
      Point first,
      Point last,
      Point min,
      Point max) {}

  /** A temperature in 0.001 °C at a monotonic time in ms. */
  record Point(long ms, int milliC) {}

  /** Takes finished blocks. */
  interface Sink {
    void block(Block block) throws SQLException;
  }

  private final int probe;
  private final Sink sink;

  private final GapRule gaps = new GapRule();
  private boolean open;
  private boolean gapBefore;
  private long firstSeq;
  private long lastSeq;
  private int boot;
  private long firstMs;
  private int firstMilliC;
  private long lastMs;
  private long intervalMs;
  private int lastMilliC;
  private long minMs;
  private int minMilliC;
  private long maxMs;
  private int maxMilliC;

  Rollup(int probe, Sink sink) {
    this.probe = probe;
    this.sink = sink;
  }

  /** Goes on behind a block that is stored already. */
  void resumeAfter(Block block) {
    gaps.resumeAfter(block.boot(), block.last().ms(), block.intervalMs());
  }

  /** A look without a temperature. */
  void fault() throws SQLException {
    gaps.fault();
    finish();
  }

  /**
   * A temperature.
   *
   * @param seq place among all inputs
   */
  void good(long seq, int atBoot, long atMs, int milliC, boolean spike) throws SQLException {
    if (spike) {
      return;
    }
    boolean gap = gaps.good(atBoot, atMs);
    if (open && !gap && sameMinute(atMs)) {
      extend(seq, atMs, milliC);
    } else {
      finish();
      begin(seq, atBoot, atMs, milliC, gap);
    }
  }

  /** Hands on the block under way, if there is one. */
  void finish() throws SQLException {
    if (open) {
      open = false;
      sink.block(
          new Block(
              firstSeq,
              lastSeq,
              boot,
              probe,
              gapBefore,
              intervalMs,
              new Point(firstMs, firstMilliC),
              new Point(lastMs, lastMilliC),
              new Point(minMs, minMilliC),
              new Point(maxMs, maxMilliC)));
    }
  }

  private boolean sameMinute(long atMs) {
    return Math.floorDiv(atMs, MINUTE_MS) == Math.floorDiv(firstMs, MINUTE_MS);
  }

  private void begin(long seq, int atBoot, long atMs, int milliC, boolean gap) {
    open = true;
    gapBefore = gap;
    firstSeq = seq;
    boot = atBoot;
    firstMs = atMs;
    firstMilliC = milliC;
    minMs = atMs;
    minMilliC = milliC;
    maxMs = atMs;
    maxMilliC = milliC;
    lastSeq = seq;
    lastMs = atMs;
    intervalMs = gaps.intervalMs();
    lastMilliC = milliC;
  }

  private void extend(long seq, long atMs, int milliC) {
    lastSeq = seq;
    lastMs = atMs;
    intervalMs = gaps.intervalMs();
    lastMilliC = milliC;
    if (milliC < minMilliC) {
      minMs = atMs;
      minMilliC = milliC;
    }
    if (milliC > maxMilliC) {
      maxMs = atMs;
      maxMilliC = milliC;
    }
  }
}
