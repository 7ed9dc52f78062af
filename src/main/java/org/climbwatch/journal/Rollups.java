package org.climbwatch.journal;

import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;

/** The minutes of all probes of one firing, each condensed for itself. */
final class Rollups implements TemperatureRows.Taker {
  private final Rollup.Sink sink;
  private final Map<Integer, Rollup> rollups = new TreeMap<>();
  private final Map<Integer, Long> stored = new TreeMap<>();

  Rollups(Rollup.Sink sink) {
    this.sink = sink;
  }

  /** Goes on behind a probe's last stored block: readings up to it are passed over. */
  void resumeAfter(Rollup.Block block) {
    of(block.probe()).resumeAfter(block);
    stored.put(block.probe(), block.lastSeq());
  }

  @Override
  public void fault(long seq, int probe) throws SQLException {
    if (isNew(seq, probe)) {
      of(probe).fault();
    }
  }

  @Override
  public void good(long seq, int boot, long ms, int probe, int milliC, boolean spike)
      throws SQLException {
    if (isNew(seq, probe)) {
      of(probe).good(seq, boot, ms, milliC, spike);
    }
  }

  /** Hands on the blocks under way. */
  void finish() throws SQLException {
    for (Rollup rollup : rollups.values()) {
      rollup.finish();
    }
  }

  private boolean isNew(long seq, int probe) {
    return stored.isEmpty() || seq > stored.getOrDefault(probe, Long.MIN_VALUE);
  }

  private Rollup of(int probe) {
    return rollups.computeIfAbsent(probe, number -> new Rollup(number, sink));
  }
}
