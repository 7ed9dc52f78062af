package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.LongBinaryOperator;

/** The table of boots: which inputs are of which boot, and the wall clock of each. */
final class Boots {
  /** A range of inputs that are all of one boot. */
  record Range(int boot, long wallOffsetMs, long first, long last) {}

  private Boots() {}

  /**
   * Sets the clock of the newest boot when it is that one, or adds a boot; answers its ordinal.
   *
   * <p>Inputs of one boot lie side by side, so a boot that comes back after another one, as when
   * the same machine has played the kiln model in between, is counted anew.
   */
  static int remember(Connection connection, String machineBootId, long wallOffsetMs, long nextSeq)
      throws SQLException {
    OptionalLong newest = newestIf(connection, machineBootId);
    if (newest.isPresent()) {
      One.change(
          connection,
          "UPDATE boot SET wall_offset_ms = ? WHERE ordinal = ?",
          wallOffsetMs,
          newest.getAsLong());
      return (int) newest.getAsLong();
    }
    int ordinal = (int) One.number(connection, "SELECT max(ordinal) FROM boot").orElse(-1) + 1;
    try (PreparedStatement insert =
        connection.prepareStatement(
            """
            INSERT INTO boot (ordinal, machine_boot_id, wall_offset_ms, first_seq)
              VALUES (?1, ?2 || iif(EXISTS (SELECT 1 FROM boot WHERE machine_boot_id = ?2),
                '#' || ?1, ''), ?3, ?4)""")) {
      insert.setInt(1, ordinal);
      insert.setString(2, machineBootId);
      insert.setLong(3, wallOffsetMs);
      insert.setLong(4, nextSeq);
      insert.executeUpdate();
    }
    return ordinal;
  }

  /** The ordinal of the newest boot, when it is that one. */
  static OptionalLong newestIf(Connection connection, String machineBootId) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(
            """
            SELECT ordinal FROM boot WHERE ordinal = (SELECT max(ordinal) FROM boot)
              AND (machine_boot_id = ?1 OR machine_boot_id = ?1 || '#' || ordinal)""")) {
      query.setString(1, machineBootId);
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? OptionalLong.of(row.getLong(1)) : OptionalLong.empty();
      }
    }
  }

  /** A range of inputs cut at the boots in it; boots without an input are left out. */
  static List<Range> between(Connection connection, long first, long last) throws SQLException {
    List<Range> ranges = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement(
            """
            SELECT ordinal, wall_offset_ms, first_seq, lead(first_seq) OVER (ORDER BY ordinal) - 1
              FROM boot WHERE first_seq <= ?2 AND ordinal >= coalesce(
                (SELECT max(ordinal) FROM boot WHERE first_seq <= ?1), 0)
              ORDER BY ordinal""")) {
      query.setLong(1, first);
      query.setLong(2, last);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          long from = Math.max(first, row.getLong(3));
          long next = row.getLong(4);
          long to = row.wasNull() ? last : Math.min(last, next);
          if (from <= to) {
            ranges.add(new Range(row.getInt(1), row.getLong(2), from, to));
          }
        }
      }
    }
    return ranges;
  }

  /** The time line of a range of inputs; the range holds one input at least. */
  static Timeline timeline(Connection connection, long first, long last) throws SQLException {
    List<Timeline.Stretch> stretches = new ArrayList<>();
    OptionalLong originMs = OptionalLong.empty();
    for (Range range : between(connection, first, last)) {
      OptionalLong firstMs = firstMs(connection, range);
      if (firstMs.isEmpty()) {
        continue;
      }
      OptionalLong lastMs = lastMs(connection, range);
      if (stretches.isEmpty()) {
        originMs = readingMs(connection, range);
      }
      stretches.add(
          new Timeline.Stretch(
              range.boot(), range.wallOffsetMs(), firstMs.getAsLong(), lastMs.orElseThrow()));
    }
    return new Timeline(stretches, originMs.orElse(stretches.get(0).firstMs()));
  }

  /** Monotonic time of the earliest input of a range. */
  static OptionalLong firstMs(Connection connection, Range range) throws SQLException {
    return inputMs(connection, range, "id LIMIT 1", Math::min);
  }

  /** Monotonic time of the latest input of a range. */
  static OptionalLong lastMs(Connection connection, Range range) throws SQLException {
    return inputMs(connection, range, "id DESC LIMIT 1", Math::max);
  }

  private static OptionalLong readingMs(Connection connection, Range range) throws SQLException {
    return One.number(
        connection,
        "SELECT ms FROM reading WHERE id BETWEEN ? AND ? ORDER BY id LIMIT 1",
        range.first(),
        range.last());
  }

  private static OptionalLong inputMs(
      Connection connection, Range range, String order, LongBinaryOperator pick)
      throws SQLException {
    OptionalLong reading =
        One.number(
            connection,
            "SELECT ms FROM reading WHERE id BETWEEN ? AND ? ORDER BY " + order,
            range.first(),
            range.last());
    OptionalLong deed =
        One.number(
            connection,
            "SELECT ms FROM deed WHERE id BETWEEN ? AND ? ORDER BY " + order,
            range.first(),
            range.last());
    if (reading.isPresent() && deed.isPresent()) {
      return OptionalLong.of(pick.applyAsLong(reading.getAsLong(), deed.getAsLong()));
    }
    return reading.isPresent() ? reading : deed;
  }
}
