package org.climbwatch.journal;

import java.nio.file.Path;
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

  /** Adds a boot, or sets the clock of one that is known. */
  static void remember(Connection connection, String machineBootId, long wallOffsetMs, long nextSeq)
      throws SQLException {
    try (PreparedStatement upsert =
        connection.prepareStatement(
            """
            INSERT INTO boot (ordinal, machine_boot_id, wall_offset_ms, first_seq)
              VALUES ((SELECT coalesce(max(ordinal) + 1, 0) FROM boot), ?1, ?2, ?3)
              ON CONFLICT (machine_boot_id) DO UPDATE SET wall_offset_ms = ?2""")) {
      upsert.setString(1, machineBootId);
      upsert.setLong(2, wallOffsetMs);
      upsert.setLong(3, nextSeq);
      upsert.executeUpdate();
    }
  }

  static int ordinal(Connection connection, String machineBootId, Path file) {
    try (PreparedStatement query =
        connection.prepareStatement("SELECT ordinal FROM boot WHERE machine_boot_id = ?")) {
      query.setString(1, machineBootId);
      try (ResultSet row = query.executeQuery()) {
        row.next();
        return row.getInt(1);
      }
    } catch (SQLException cause) {
      throw JournalTrouble.of("read", file, cause);
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
