package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.SQLException;

/** Reads a firing's curve: from its readings when they are few, else from its minutes. */
final class FiringCurve implements TemperatureRows.Taker {
  /** So many readings are read and reduced in some 10 ms. */
  private static final long MOST_READINGS = 30_000;

  private final Connection connection;
  private final FiringRange firing;
  private final Timeline timeline;
  private final CurvePoints points = new CurvePoints();
  private final GapRule gaps = new GapRule();

  FiringCurve(Connection connection, FiringRange firing) throws SQLException {
    this.connection = connection;
    this.firing = firing;
    this.timeline = Boots.timeline(connection, firing.first(), firing.last());
  }

  /** All of it, with every peak and gap. */
  Curve full() throws SQLException {
    long next = firing.first();
    if (firing.last() - firing.first() >= MOST_READINGS) {
      next = minutes();
    }
    TemperatureRows.read(connection, next, firing.last(), this);
    return points.curve();
  }

  /** The finished minutes; answers the place of the first reading behind them. */
  private long minutes() throws SQLException {
    Rollup.Block last = null;
    for (Rollup.Block block : Minutes.of(connection, firing.id())) {
      block(block);
      last = block;
    }
    if (last == null) {
      return firing.first();
    }
    gaps.resumeAfter(last.boot(), last.last().ms(), last.intervalMs());
    return last.lastSeq() + 1;
  }

  private void block(Rollup.Block block) {
    if (block.gapBefore()) {
      points.gap();
    }
    boolean minFirst = block.min().ms() <= block.max().ms();
    add(block.boot(), block.first());
    add(block.boot(), minFirst ? block.min() : block.max());
    add(block.boot(), minFirst ? block.max() : block.min());
    add(block.boot(), block.last());
  }

  private void add(int boot, Rollup.Point point) {
    points.addUnlessSame(timeline.elapsedMs(boot, point.ms()), point.milliC() / 1e3);
  }

  @Override
  public void fault() {
    gaps.fault();
  }

  @Override
  public void good(long seq, int boot, long ms, int probe, int milliC, boolean spike) {
    if (spike) {
      return;
    }
    if (gaps.good(boot, ms)) {
      points.gap();
    }
    points.add(timeline.elapsedMs(boot, ms), milliC / 1e3);
  }
}
