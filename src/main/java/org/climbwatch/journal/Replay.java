package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;

/** Hands out stored inputs in the order in which they came, bit for bit as they were. */
final class Replay {
  /** Of a row's marks: that it was looked once. */
  private static final long ONE_LOOK = 1 << 10;

  private final Connection connection;
  private final Probes probes;
  private final SettingsCodec codec;
  private int lastProbe = -1;
  private String lastName = "";

  Replay(Connection connection, SettingsCodec codec) throws SQLException {
    this.connection = connection;
    this.probes = new Probes(connection);
    this.codec = codec;
  }

  /** The settings in force at a place, then all inputs from there on. */
  void from(long first, Consumer<Input> into) throws SQLException {
    between(first, Long.MAX_VALUE, into);
  }

  /** The settings in force at a place, then all inputs from there to another. */
  void between(long first, long last, Consumer<Input> into) throws SQLException {
    Deeds.configuredBefore(connection, first)
        .ifPresent(row -> into.accept(Deeds.input(row, codec)));
    long next = first;
    for (Deeds.Row deed : Deeds.between(connection, first, last)) {
      readings(next, deed.id() - 1, into);
      into.accept(Deeds.input(deed, codec));
      next = deed.id() + 1;
    }
    readings(next, last, into);
  }

  private void readings(long first, long last, Consumer<Input> into) throws SQLException {
    if (first > last) {
      return;
    }
    try (PreparedStatement query =
        connection.prepareStatement(
            """
            SELECT (boot << 11) | ((samples IS NULL OR spread IS NULL) << 10) | (probe << 2) | kind, ms,
              (coalesce(emf_tenth_uv, linearised_mc, fault) << 32)
                | (ifnull(cold_junction_mc, -2147483648) & 4294967295),
              (samples << 32) | spread
              FROM reading WHERE id BETWEEN ? AND ? ORDER BY id""")) {
      query.setLong(1, first);
      query.setLong(2, last);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          into.accept(new Input.Measured(reading(row)));
        }
      }
    }
  }

  /** Numbers share columns, for every one that is asked for costs as much as the row. */
  private Reading reading(ResultSet row) throws SQLException {
    long marks = row.getLong(1);
    Moment at = new Moment((int) (marks >> 11), row.getLong(2));
    String probe = name((int) (marks >> 2) & 0xff);
    long values = row.getLong(3);
    int raw = (int) (values >> 32);
    int coldJunctionMilliC = (int) values;
    long looks = (marks & ONE_LOOK) == 0 ? row.getLong(4) : 1L << 32;
    int samples = (int) (looks >> 32);
    int spread = (int) looks;
    return switch ((int) marks & 3) {
      case Codes.KIND_EMF ->
          Reading.emf(at, probe, raw / 1e4, coldJunctionMilliC / 1e3, samples, spread / 1e4);
      case Codes.KIND_LINEARISED ->
          Reading.linearised(
              at,
              probe,
              raw / 1e3,
              coldJunctionMilliC == Codes.NONE
                  ? OptionalDouble.empty()
                  : OptionalDouble.of(coldJunctionMilliC / 1e3),
              samples,
              spread / 1e3);
      default -> Reading.faulty(at, probe, Codes.fault(raw));
    };
  }

  /** Most rows are of the same probe as the one before. */
  private String name(int probe) {
    if (probe != lastProbe) {
      lastName = probes.name(probe);
      lastProbe = probe;
    }
    return lastName;
  }
}
