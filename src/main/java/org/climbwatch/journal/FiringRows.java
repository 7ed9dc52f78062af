package org.climbwatch.journal;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * Streams a firing's rows in their order.
 *
 * <p>A call into SQLite costs more than what it does, so each row comes packed into four numbers,
 * and what is the same over a range (its boot) or rare (deeds) is not asked for row by row.
 */
final class FiringRows {
  private static final String PACKED =
      """
      SELECT (ms << 16) | (probe << 8) | (ifnull(fault, 0) << 3) | phase,
        (ifnull(temperature_mc, -2147483648) << 32)
          | (ifnull(emf_tenth_uv, -2147483648) & 4294967295),
        (ifnull(cold_junction_mc, -2147483648) << 32)
          | (ifnull(uncertainty_cc, -2147483648) & 4294967295),
        ifnull(climb_dc_h, -2147483648),
        (samples << 32) | spread
        FROM reading WHERE id BETWEEN ? AND ? ORDER BY id""";

  private final Connection connection;
  private final FiringRange firing;
  private final Probes probes;
  private final Timeline timeline;
  private final RowSink sink;
  private String phase;
  private long elapsedMs;

  FiringRows(Connection connection, FiringRange firing, RowSink sink) throws SQLException {
    this.connection = connection;
    this.firing = firing;
    this.sink = sink;
    probes = new Probes(connection);
    timeline = Boots.timeline(connection, firing.first(), firing.last());
  }

  void stream() throws SQLException, IOException {
    phase = firstPhase();
    try (PreparedStatement query = connection.prepareStatement(PACKED)) {
      for (Boots.Range boot : Boots.between(connection, firing.first(), firing.last())) {
        long next = boot.first();
        for (Deeds.Row deed : Deeds.between(connection, boot.first(), boot.last())) {
          readings(query, boot, next, deed.id() - 1);
          deed(deed);
          next = deed.id() + 1;
        }
        readings(query, boot, next, boot.last());
      }
    }
    for (RecordedDeed remark : Remarks.of(connection, firing.id(), timeline)) {
      sink.deed(remark, phase);
    }
  }

  private String firstPhase() throws SQLException {
    long code =
        One.number(
                connection,
                "SELECT phase FROM reading WHERE id BETWEEN ? AND ? ORDER BY id LIMIT 1",
                firing.first(),
                firing.last())
            .orElse(0);
    return Codes.phase((int) code).word();
  }

  private void deed(Deeds.Row row) throws IOException {
    elapsedMs = Math.max(elapsedMs, timeline.elapsedMs(row.at().boot(), row.at().millis()));
    sink.deed(row.recorded(timeline, elapsedMs), phase);
  }

  private void readings(PreparedStatement query, Boots.Range boot, long first, long last)
      throws SQLException, IOException {
    if (first > last) {
      return;
    }
    query.setLong(1, first);
    query.setLong(2, last);
    try (ResultSet row = query.executeQuery()) {
      while (row.next()) {
        reading(
            boot.boot(),
            row.getLong(1),
            row.getLong(2),
            row.getLong(3),
            row.getInt(4),
            row.getLong(5));
      }
    }
  }

  private void reading(
      int boot, long head, long shown, long instrument, int climbDeciCPerHour, long looks)
      throws IOException {
    long ms = head >> 16;
    elapsedMs = Math.max(elapsedMs, timeline.elapsedMs(boot, ms));
    phase = Codes.phase((int) head & 7).word();
    int temperatureMilliC = (int) (shown >> 32);
    int emfTenthUv = (int) shown;
    boolean signal = emfTenthUv != Codes.NONE;
    boolean several = looks != 0;
    int one = signal || temperatureMilliC != Codes.NONE ? 1 : Codes.NONE;
    sink.reading(
        timeline.wallMs(boot, ms),
        elapsedMs,
        probes.name((int) (head >> 8) & 0xff),
        temperatureMilliC,
        (int) instrument,
        climbDeciCPerHour,
        emfTenthUv,
        (int) (instrument >> 32),
        Codes.quality((int) (head >> 3) & 31),
        phase,
        several ? (int) (looks >> 32) : one,
        several && signal ? (int) looks : Codes.NONE,
        several && !signal ? (int) looks : Codes.NONE);
  }
}
