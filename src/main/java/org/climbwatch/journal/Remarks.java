package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The table of notes on firings that were over. */
final class Remarks {
  private Remarks() {}

  static void insert(Connection connection, long firing, long wallMs, String text)
      throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO remark (firing, wall_ms, text) VALUES (?, ?, ?)")) {
      insert.setLong(1, firing);
      insert.setLong(2, wallMs);
      insert.setString(3, text);
      insert.executeUpdate();
    }
  }

  /** All of a firing, in the order in which they were written; none is earlier than its end. */
  static List<RecordedDeed> of(Connection connection, long firing, Timeline timeline)
      throws SQLException {
    List<RecordedDeed> remarks = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT wall_ms, text FROM remark WHERE firing = ? ORDER BY id")) {
      query.setLong(1, firing);
      try (ResultSet row = query.executeQuery()) {
        long elapsedMs = timeline.endElapsedMs();
        while (row.next()) {
          long wallMs = row.getLong(1);
          long sinceEndMs = wallMs - timeline.endWallMs();
          elapsedMs = Math.max(elapsedMs, timeline.endElapsedMs() + sinceEndMs);
          remarks.add(
              new RecordedDeed(
                  Instant.ofEpochMilli(wallMs), elapsedMs, "remarked", "", row.getString(2)));
        }
      }
    }
    return remarks;
  }
}
