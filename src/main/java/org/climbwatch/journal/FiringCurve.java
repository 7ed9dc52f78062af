package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads the curve of one probe in a firing: from its readings when they are few, else from its
 * minutes.
 */
final class FiringCurve implements TemperatureRows.Taker {
  /** So many readings are read and reduced in some 10 ms. */
  private static final long MOST_READINGS = 30_000;

  /** More than eight probes take in a minute at ten readings a second. */
  private static final int FEW_READINGS = 5000;

  private final Connection connection;
  private final FiringRange firing;
  private final int probe;
  private final Timeline timeline;
  private final CurvePoints points = new CurvePoints();
  private final GapRule gaps = new GapRule();

  FiringCurve(Connection connection, FiringRange firing, int probe) throws SQLException {
    this.connection = connection;
    this.firing = firing;
    this.probe = probe;
    this.timeline = Boots.timeline(connection, firing.first(), firing.last());
  }

  /** The numbers of the probes that measured in a firing, the followed one first. */
  static List<Integer> probes(Connection connection, FiringRange firing) throws SQLException {
    List<Integer> probes = new ArrayList<>(List.of(firing.probe()));
    try (PreparedStatement query =
        connection.prepareStatement(
            """
            SELECT probe FROM minute WHERE firing = ?1 UNION
              SELECT probe FROM reading WHERE id BETWEEN max(?2, ?3 - ?4) AND ?3
              ORDER BY probe""")) {
      query.setLong(1, firing.id());
      query.setLong(2, firing.first());
      query.setLong(3, firing.last());
      query.setLong(4, FEW_READINGS);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          if (row.getInt(1) != firing.probe()) {
            probes.add(row.getInt(1));
          }
        }
      }
    }
    return probes;
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
    for (Rollup.Block block : Minutes.of(connection, firing.id(), probe)) {
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
  public void fault(long seq, int atProbe) {
    if (atProbe == probe) {
      gaps.fault();
    }
  }

  @Override
  public void good(long seq, int boot, long ms, int atProbe, int milliC, boolean spike) {
    if (spike || atProbe != probe) {
      return;
    }
    if (gaps.good(boot, ms)) {
      points.gap();
    }
    points.add(timeline.elapsedMs(boot, ms), milliC / 1e3);
  }
}
