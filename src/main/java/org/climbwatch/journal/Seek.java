package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * Finds readings by their time within one boot without an index on time, which would double what
 * each commit writes: within a boot, places rise with time, so halving the range finds them.
 */
final class Seek {
  private Seek() {}

  /**
   * The first reading of a range, all of one boot, that is not before a monotonic time.
   *
   * @return its place, or {@code last + 1} when there is none
   */
  static long firstNotBefore(Connection connection, long first, long last, long ms)
      throws SQLException {
    long low = first;
    long high = last + 1;
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT id, ms FROM reading WHERE id BETWEEN ? AND ? ORDER BY id LIMIT 1")) {
      query.setLong(2, last);
      while (low < high) {
        long middle = low + (high - low) / 2;
        query.setLong(1, middle);
        try (ResultSet row = query.executeQuery()) {
          if (!row.next()) {
            high = middle;
          } else if (row.getLong(2) >= ms) {
            high = middle;
          } else {
            low = row.getLong(1) + 1;
          }
        }
      }
    }
    return firstAtOrBehind(connection, low, last);
  }

  private static long firstAtOrBehind(Connection connection, long low, long last)
      throws SQLException {
    return One.number(connection, "SELECT min(id) FROM reading WHERE id BETWEEN ? AND ?", low, last)
        .orElse(last + 1);
  }
}
