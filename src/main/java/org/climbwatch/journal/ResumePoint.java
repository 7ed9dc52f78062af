package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.OptionalLong;

/**
 * Where a replay must start so that the core comes to the state that it had.
 *
 * <p>The core forgets: what it knows of a quiet, idle kiln rests on its last hours only (an
 * on-delay is 2 h at most, the look back for a firing that begins by itself 1 h). So the replay
 * starts three recorded hours before the open firing, or before the end of the journal when none is
 * open. If a firing was on or an alarm stood there, it starts three hours before that one began,
 * and so on back. Weeks of an idle kiln (one reading a minute) are thus never read.
 */
final class ResumePoint {
  private static final long RUN_IN_MS = 3 * 3_600_000L;

  /**
   * An alarm that stands for weeks (nobody is there, the probe is out) ends the way back here: some
   * seconds of replay. The core then raises it anew if its cause still holds.
   */
  private static final long MOST_INPUTS = 2_000_000;

  private final Connection connection;
  private final long end;

  private ResumePoint(Connection connection, long end) {
    this.connection = connection;
    this.end = end;
  }

  /** The place of the first input to replay, given the place that the next input will get. */
  static long find(Connection connection, long nextSeq) throws SQLException {
    return new ResumePoint(connection, nextSeq).find();
  }

  private long find() throws SQLException {
    long anchor =
        One.number(connection, "SELECT max(first_seq) FROM firing WHERE last_seq IS NULL")
            .orElse(end);
    long farthest = Math.min(anchor, end - MOST_INPUTS);
    while (true) {
      long start = runInStart(anchor);
      OptionalLong unquiet = unquietSince(start, anchor);
      if (unquiet.isEmpty() || start <= farthest) {
        return start;
      }
      anchor = unquiet.getAsLong();
    }
  }

  /** The beginning of what was going on at a place, if a firing or an alarm was. */
  private OptionalLong unquietSince(long start, long anchor) throws SQLException {
    OptionalLong firing =
        One.number(
            connection,
            "SELECT min(first_seq) FROM firing WHERE last_seq >= ? AND first_seq < ?",
            start,
            anchor);
    OptionalLong alarm = alarmSince(start);
    if (firing.isPresent() && alarm.isPresent()) {
      return OptionalLong.of(Math.min(firing.getAsLong(), alarm.getAsLong()));
    }
    return firing.isPresent() ? firing : alarm;
  }

  private OptionalLong alarmSince(long start) throws SQLException {
    long before =
        One.number(connection, "SELECT max(id) FROM event WHERE seq < ?", start).orElse(0);
    boolean stood =
        One.number(connection, "SELECT standing FROM event WHERE id = ?", before).orElse(0) > 0;
    if (!stood) {
      return OptionalLong.empty();
    }
    return One.number(
        connection,
        """
        SELECT seq FROM event WHERE standing > 0 AND id > (
          SELECT coalesce(max(id), 0) FROM event WHERE id <= ? AND standing = 0)
        ORDER BY id LIMIT 1""",
        before);
  }

  /** Three recorded hours before a place, over as many boots as that takes. */
  private long runInStart(long anchor) throws SQLException {
    long start = anchor;
    long missingMs = RUN_IN_MS;
    try (PreparedStatement boots =
        connection.prepareStatement(
            "SELECT first_seq FROM boot WHERE first_seq < ? ORDER BY ordinal DESC")) {
      boots.setLong(1, anchor);
      try (ResultSet boot = boots.executeQuery()) {
        while (missingMs > 0 && boot.next()) {
          long bootFirst = boot.getLong(1);
          long lastMs = ms("max", bootFirst, start - 1).orElse(0);
          long firstMs = ms("min", bootFirst, start - 1).orElse(lastMs);
          long spanMs = lastMs - firstMs;
          start =
              spanMs > missingMs
                  ? Seek.firstNotBefore(connection, bootFirst, start - 1, lastMs - missingMs)
                  : bootFirst;
          missingMs -= spanMs;
        }
      }
    }
    return start;
  }

  private OptionalLong ms(String end, long first, long last) throws SQLException {
    return One.number(
        connection,
        "SELECT ms FROM reading WHERE id = (SELECT "
            + end
            + "(id) FROM reading WHERE id BETWEEN ? AND ?)",
        first,
        last);
  }
}
