package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.OptionalLong;

/**
 * Where a replay must start so that the core comes to the state that it had.
 *
 * <p>The core forgets: what it knows of a quiet, idle kiln rests on its last hours only (an
 * on-delay is 2 h at most, the look back for a firing that begins by itself 1 h). So the replay
 * starts three hours before the open firing, or before the end of the journal when none is open. If
 * a firing was on or an alarm stood there, it starts three hours before that one began, and so on
 * back. Weeks of an idle kiln (one reading a minute) are thus never read.
 */
final class ResumePoint {
  /**
   * An alarm that stands for weeks (nobody is there, the probe is out) ends the way back here, half
   * a second of replay; never later than where the open firing began. The core then raises the
   * alarm anew if its cause still holds.
   */
  private static final long MOST_INPUTS = 500_000;

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
      long start = RunIn.start(connection, anchor);
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
}
