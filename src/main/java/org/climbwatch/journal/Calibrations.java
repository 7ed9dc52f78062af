package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.climbwatch.thermocouple.Correction;

/** The table of calibrations. */
final class Calibrations {
  private Calibrations() {}

  static void insert(Connection connection, Calibration calibration) throws SQLException {
    try (PreparedStatement insert =
        connection.prepareStatement(
            "INSERT INTO calibration (wall_ms, probe, who, how, points, note)"
                + " VALUES (?, ?, ?, ?, ?, ?)")) {
      insert.setLong(1, calibration.at().toEpochMilli());
      insert.setString(2, calibration.probe());
      insert.setString(3, calibration.who());
      insert.setString(4, calibration.how());
      insert.setString(5, calibration.correction().text());
      insert.setString(6, calibration.note());
      insert.executeUpdate();
    }
  }

  static List<Calibration> all(Connection connection) throws SQLException {
    List<Calibration> all = new ArrayList<>();
    try (PreparedStatement query =
            connection.prepareStatement(
                "SELECT wall_ms, probe, who, how, points, note FROM calibration ORDER BY id");
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        all.add(
            new Calibration(
                Instant.ofEpochMilli(row.getLong(1)),
                row.getString(2),
                row.getString(3),
                row.getString(4),
                Correction.ofText(row.getString(5)),
                row.getString(6)));
      }
    }
    return all;
  }
}
