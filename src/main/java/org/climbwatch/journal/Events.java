package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.HashSet;
import java.util.Set;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.watch.Event;

/**
 * Writes events as they were announced, and knows which alarms stand.
 *
 * <p>Beside each event stands how many alarms were not normal after it: so whether all was quiet at
 * some place of the journal is one look-up.
 */
final class Events {
  private final Connection connection;
  private final Set<String> standing;

  private Events(Connection connection, Set<String> standing) {
    this.connection = connection;
    this.standing = standing;
  }

  static Events load(Connection connection) throws SQLException {
    Set<String> standing = new HashSet<>();
    long quiet = One.number(connection, "SELECT max(id) FROM event WHERE standing = 0").orElse(0);
    try (PreparedStatement query =
        connection.prepareStatement(
            // SQLite takes the bare column from the row of the maximum
            """
            SELECT alarm, state, max(id) FROM event
              WHERE alarm IS NOT NULL AND id > ? GROUP BY alarm""")) {
      query.setLong(1, quiet);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          if (!row.getString(2).equals(AlarmState.NORMAL.word())) {
            standing.add(row.getString(1));
          }
        }
      }
    }
    return new Events(connection, standing);
  }

  void write(long seq, Event event) throws SQLException {
    if (event instanceof Event.AlarmChanged alarm) {
      if (alarm.alarmState() == AlarmState.NORMAL) {
        standing.remove(alarm.id());
      } else {
        standing.add(alarm.id());
      }
    }
    try (PreparedStatement insert =
        connection.prepareStatement(
            """
            INSERT INTO event (seq, boot, ms, event, subject, state, message, standing, alarm,
              since_boot, since_ms, by_itself) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")) {
      insert.setLong(1, seq);
      insert.setInt(2, event.at().boot());
      insert.setLong(3, event.at().millis());
      insert.setString(4, event.event());
      insert.setString(5, event.subject());
      insert.setString(6, event.state());
      insert.setString(7, event.message());
      insert.setInt(8, standing.size());
      setParticulars(insert, event);
      insert.executeUpdate();
    }
  }

  private static void setParticulars(PreparedStatement insert, Event event) throws SQLException {
    for (int column = 9; column <= 12; column++) {
      insert.setNull(column, Types.NULL);
    }
    if (event instanceof Event.AlarmChanged alarm) {
      insert.setString(9, alarm.id());
    } else if (event instanceof Event.AlarmReminded alarm) {
      insert.setString(9, alarm.id());
    } else if (event instanceof Event.FiringBegan began) {
      insert.setInt(10, began.since().boot());
      insert.setLong(11, began.since().millis());
      insert.setInt(12, began.byItself() ? 1 : 0);
    } else if (event instanceof Event.FiringEnded ended) {
      insert.setInt(12, ended.byItself() ? 1 : 0);
    }
  }
}
