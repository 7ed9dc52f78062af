package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** The table of minute blocks of each firing. */
final class Minutes {
  private static final String COLUMNS =
      """
      SELECT first_seq, last_seq, boot, probe, gap_before, interval_ms, first_ms, first_mc, last_ms, last_mc,
        min_ms, min_mc, max_ms, max_mc FROM minute""";

  private Minutes() {}

  static void insert(Connection connection, long firing, Rollup.Block block) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            """
            INSERT INTO minute (firing, first_seq, last_seq, boot, probe, gap_before, interval_ms, first_ms,
              first_mc, last_ms, last_mc, min_ms, min_mc, max_ms, max_mc)
              VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")) {
      insert.setLong(1, firing);
      insert.setLong(2, block.firstSeq());
      insert.setLong(3, block.lastSeq());
      insert.setInt(4, block.boot());
      insert.setInt(5, block.probe());
      insert.setInt(6, block.gapBefore() ? 1 : 0);
      insert.setLong(7, block.intervalMs());
      int column = 8;
      for (Rollup.Point point : List.of(block.first(), block.last(), block.min(), block.max())) {
        insert.setLong(column++, point.ms());
        insert.setInt(column++, point.milliC());
      }
      insert.executeUpdate();
    }
  }

  /** All finished blocks of one probe in a firing, in order. */
  static List<Rollup.Block> of(Connection connection, long firing, int probe) throws SQLException {
    return query(
        connection, COLUMNS + " WHERE firing = ? AND probe = ? ORDER BY first_seq", firing, probe);
  }

  /** The last finished block of each probe in a firing. */
  static List<Rollup.Block> last(Connection connection, long firing) throws SQLException {
    return query(
        connection,
        COLUMNS
            + " WHERE firing = ?1 AND first_seq IN"
            + " (SELECT max(first_seq) FROM minute WHERE firing = ?1 GROUP BY probe)",
        firing);
  }

  private static List<Rollup.Block> query(Connection connection, String sql, long... numbers)
      throws SQLException {
    List<Rollup.Block> blocks = new ArrayList<>();
    try (PreparedStatement query = connection.prepareStatement(sql)) {
      for (int i = 0; i < numbers.length; i++) {
        query.setLong(i + 1, numbers[i]);
      }
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          blocks.add(block(row));
        }
      }
    }
    return blocks;
  }

  private static Rollup.Block block(ResultSet row) throws SQLException {
    return new Rollup.Block(
        row.getLong(1),
        row.getLong(2),
        row.getInt(3),
        row.getInt(4),
        row.getInt(5) != 0,
        row.getLong(6),
        point(row, 7),
        point(row, 9),
        point(row, 11),
        point(row, 13));
  }

  private static Rollup.Point point(ResultSet row, int column) throws SQLException {
    return new Rollup.Point(row.getLong(column), row.getInt(column + 1));
  }
}
