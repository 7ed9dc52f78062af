package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** Reads the temperatures of a range of inputs. */
final class TemperatureRows {
  /** Takes them in their order. */
  interface Taker {
    /** A look without a temperature. */
    void fault(long seq, int probe) throws SQLException;

    /**
     * A temperature.
     *
     * @param seq place among all inputs
     * @param ms monotonic time of the boot
     * @param milliC 0.001 °C
     * @param spike set aside by the core
     */
    void good(long seq, int boot, long ms, int probe, int milliC, boolean spike)
        throws SQLException;
  }

  private TemperatureRows() {}

  static void read(Connection connection, long first, long last, Taker taker) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(
            """
            SELECT id, ms, (boot << 9) | (probe << 1) | spike,
              ifnull(temperature_mc, -2147483648)
              FROM reading WHERE id BETWEEN ? AND ? ORDER BY id""")) {
      query.setLong(1, first);
      query.setLong(2, last);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          int milliC = row.getInt(4);
          long marks = row.getLong(3);
          if (milliC == Codes.NONE) {
            taker.fault(row.getLong(1), (int) (marks >> 1) & 0xff);
          } else {
            taker.good(
                row.getLong(1),
                (int) (marks >> 9),
                row.getLong(2),
                (int) (marks >> 1) & 0xff,
                milliC,
                (marks & 1) != 0);
          }
        }
      }
    }
  }
}
