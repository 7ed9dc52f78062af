package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads events as they were announced. */
final class EventRows {
  private EventRows() {}

  static List<RecordedEvent> of(Connection connection, FiringRange firing) throws SQLException {
    Timeline timeline = Boots.timeline(connection, firing.first(), firing.last());
    List<RecordedEvent> events = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement(
            """
            SELECT boot, ms, event, subject, state, message, alarm
              FROM event WHERE seq BETWEEN ? AND ? ORDER BY seq, id""")) {
      query.setLong(1, firing.first());
      query.setLong(2, firing.last());
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          events.add(event(row, timeline));
        }
      }
    }
    return events;
  }

  private static RecordedEvent event(ResultSet row, Timeline timeline) throws SQLException {
    int boot = row.getInt(1);
    long ms = row.getLong(2);
    return new RecordedEvent(
        Instant.ofEpochMilli(timeline.wallMs(boot, ms)),
        timeline.elapsedMs(boot, ms),
        row.getString(3),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        Optional.ofNullable(row.getString(7)));
  }
}
