package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;

/** The names of probes and the small numbers that stand for them in the rows. */
final class Probes {
  /** As many as the packed rows of {@link ReadingRows} have room for. */
  private static final int MOST = 255;

  private final Connection connection;
  private final Map<String, Integer> ids = new HashMap<>();
  private final Map<Integer, String> names = new HashMap<>();

  Probes(Connection connection) throws SQLException {
    this.connection = connection;
    try (PreparedStatement query = connection.prepareStatement("SELECT id, name FROM probe");
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        remember(row.getInt(1), row.getString(2));
      }
    }
  }

  String name(int id) {
    return names.get(id);
  }

  /** The number of a name; empty where it never measured. */
  OptionalInt known(String name) {
    Integer id = ids.get(name);
    return id == null ? OptionalInt.empty() : OptionalInt.of(id);
  }

  /** The number of a name, new in the file where need be; inside the writer's transaction. */
  int id(String name) throws SQLException {
    Integer known = ids.get(name);
    return known != null ? known : add(name);
  }

  private int add(String name) throws SQLException {
    int id = ids.size() + 1;
    if (id > MOST) {
      throw new SQLException("more than " + MOST + " names of probes in one journal");
    }
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO probe (id, name) VALUES (?, ?)")) {
      insert.setInt(1, id);
      insert.setString(2, name);
      insert.executeUpdate();
    }
    remember(id, name);
    return id;
  }

  private void remember(int id, String name) {
    ids.put(name, id);
    names.put(id, name);
  }
}
