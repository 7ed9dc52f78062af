package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** Works out the line of a firing in the list from its rows. */
final class Summaries {
  private Summaries() {}

  static FiringSummary of(Connection connection, FiringRange firing) throws SQLException {
    Timeline timeline = Boots.timeline(connection, firing.first(), firing.last());
    Instant ended = Instant.ofEpochMilli(timeline.endWallMs());
    return new FiringSummary(
        firing.id(),
        firing.name(),
        Instant.ofEpochMilli(timeline.startWallMs()),
        firing.open() ? Optional.empty() : Optional.of(ended),
        firing.byItself(),
        peakC(connection, firing),
        readings(connection, firing),
        count(
            connection,
            "SELECT count(DISTINCT alarm) FROM event WHERE seq BETWEEN ? AND ?"
                + " AND state = 'unacknowledged'",
            firing),
        Duration.ofMillis(timeline.durationMs()));
  }

  /** Places have no holes: what is no deed is a reading. */
  private static long readings(Connection connection, FiringRange firing) throws SQLException {
    long inputs = firing.last() - firing.first() + 1;
    return inputs - count(connection, "SELECT count(*) FROM deed WHERE id BETWEEN ? AND ?", firing);
  }

  private static long count(Connection connection, String sql, FiringRange firing)
      throws SQLException {
    return One.number(connection, sql, firing.first(), firing.last()).orElse(0);
  }

  private static OptionalDouble peakC(Connection connection, FiringRange firing)
      throws SQLException {
    OptionalLong milliC =
        firing.open() ? peakSoFar(connection, firing) : peakOf(connection, firing);
    return milliC.isPresent()
        ? OptionalDouble.of(milliC.getAsLong() / 1e3)
        : OptionalDouble.empty();
  }

  private static OptionalLong peakOf(Connection connection, FiringRange firing)
      throws SQLException {
    return One.number(connection, "SELECT peak_mc FROM firing WHERE id = ?", firing.id());
  }

  /** That of the finished minutes and of the readings behind them. */
  private static OptionalLong peakSoFar(Connection connection, FiringRange firing)
      throws SQLException {
    return One.number(
        connection,
        """
        SELECT max(mc) FROM (
          SELECT max(max_mc) AS mc FROM minute WHERE firing = ?1 AND probe = ?4
          UNION ALL
          SELECT max(temperature_mc) FROM reading WHERE spike = 0 AND probe = ?4
            AND id BETWEEN (SELECT coalesce(max(last_seq), ?2 - 1) + 1 FROM minute
              WHERE firing = ?1 AND probe = ?4) AND ?3)""",
        firing.id(),
        firing.first(),
        firing.last(),
        firing.probe());
  }
}
