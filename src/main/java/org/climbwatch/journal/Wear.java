package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * How long each probe was how hot, by the minutes of the firings: kept once a firing is over, so
 * that hundreds of them are summed up in no time.
 *
 * <p>A minute that goes through a limit counts by the share of its span that lies above.
 */
final class Wear {
  private static final double MS_PER_HOUR = 3_600_000;

  private static final String OF_A_FIRING =
      "SELECT firing, probe, max(max_mc), "
          + over(800)
          + ", "
          + over(1000)
          + ", "
          + over(1100)
          + ", "
          + over(1200)
          + " FROM (SELECT *, last_ms - first_ms + min(interval_ms, 60000) AS ms FROM minute"
          + " WHERE firing = ?1) GROUP BY firing, probe";

  /** When a firing began, by the clock: its first input is a reading or the potter's word. */
  static final String BEGAN =
      """
      coalesce(
        (SELECT ms + wall_offset_ms FROM reading JOIN boot ON ordinal = boot
          WHERE reading.id = firing.first_seq),
        (SELECT ms + wall_offset_ms FROM deed JOIN boot ON ordinal = boot
          WHERE deed.id = firing.first_seq), 0)""";

  private Wear() {}

  private static String over(int celsius) {
    String limit = celsius + "000";
    return "sum(CASE WHEN min_mc >= "
        + limit
        + " THEN ms WHEN max_mc < "
        + limit
        + " THEN 0 ELSE ms * (max_mc - "
        + limit
        + ") / (max_mc - min_mc) END)";
  }

  /** Sums up a firing that is over. */
  static void keep(Connection connection, long firing) throws SQLException {
    One.change(connection, "INSERT OR REPLACE INTO wear " + OF_A_FIRING, firing);
  }

  static ProbeWear of(Connection connection, String probe, long sinceWallMs) throws SQLException {
    long open =
        One.number(connection, "SELECT max(id) FROM firing WHERE last_seq IS NULL").orElse(0);
    String sql =
        "SELECT count(*), sum(worn.peak_mc >= 1000000), sum(over_800_ms), sum(over_1000_ms),"
            + " sum(over_1100_ms), sum(over_1200_ms) FROM (SELECT * FROM wear UNION ALL "
            + OF_A_FIRING
            + ") AS worn JOIN firing ON firing.id = worn.firing"
            + " WHERE worn.probe = (SELECT id FROM probe WHERE name = ?2) AND "
            + BEGAN
            + " >= ?3";
    try (PreparedStatement query = connection.prepareStatement(sql)) {
      query.setLong(1, open);
      query.setString(2, probe);
      query.setLong(3, sinceWallMs);
      try (ResultSet row = query.executeQuery()) {
        row.next();
        return new ProbeWear(
            row.getInt(1),
            row.getInt(2),
            row.getLong(3) / MS_PER_HOUR,
            row.getLong(4) / MS_PER_HOUR,
            row.getLong(5) / MS_PER_HOUR,
            row.getLong(6) / MS_PER_HOUR);
      }
    }
  }
}
