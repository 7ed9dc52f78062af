package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which inputs are a firing's.
 *
 * @param last the newest of all while it is on
 * @param probe number of the one that it follows
 */
record FiringRange(
    long id, String name, boolean byItself, boolean open, long first, long last, int probe) {

  private static final String COLUMNS =
      """
      SELECT id, name, by_itself, last_seq IS NULL, first_seq, ifnull(last_seq, ?1), probe
        FROM firing WHERE first_seq <= ?1\s""";

  /** All, the newest first. */
  static List<FiringRange> all(Connection connection) throws SQLException {
    return query(connection, COLUMNS + "ORDER BY id DESC", 0);
  }

  static Optional<FiringRange> one(Connection connection, long id) throws SQLException {
    return query(connection, COLUMNS + "AND id = ?2", id).stream().findFirst();
  }

  private static List<FiringRange> query(Connection connection, String sql, long id)
      throws SQLException {
    List<FiringRange> firings = new ArrayList<>();
    try (PreparedStatement query = connection.prepareStatement(sql)) {
      query.setLong(1, One.lastSeq(connection));
      if (id != 0) {
        query.setLong(2, id);
      }
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          firings.add(
              new FiringRange(
                  row.getLong(1),
                  row.getString(2),
                  row.getInt(3) != 0,
                  row.getInt(4) != 0,
                  row.getLong(5),
                  row.getLong(6),
                  row.getInt(7)));
        }
      }
    }
    return firings;
  }
}
