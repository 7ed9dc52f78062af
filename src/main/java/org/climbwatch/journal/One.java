package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.OptionalLong;

/** Queries whose answer is one number. */
final class One {
  private One() {}

  /** The first column of the first row; empty when there is no row or it is NULL. */
  static OptionalLong number(Connection connection, String sql, long... parameters)
      throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(sql)) {
      for (int i = 0; i < parameters.length; i++) {
        query.setLong(i + 1, parameters[i]);
      }
      try (ResultSet row = query.executeQuery()) {
        if (!row.next()) {
          return OptionalLong.empty();
        }
        long number = row.getLong(1);
        return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
      }
    }
  }

  /** Runs a statement that changes rows. */
  static void change(Connection connection, String sql, long... parameters) throws SQLException {
    try (PreparedStatement change = connection.prepareStatement(sql)) {
      for (int i = 0; i < parameters.length; i++) {
        change.setLong(i + 1, parameters[i]);
      }
      change.executeUpdate();
    }
  }

  /** The place of the newest input, 0 when there is none. */
  static long lastSeq(Connection connection) throws SQLException {
    long reading = number(connection, "SELECT max(id) FROM reading").orElse(0);
    return Math.max(reading, number(connection, "SELECT max(id) FROM deed").orElse(0));
  }
}
