package org.climbwatch.journal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A probe beside the one that its firings followed, from firing to firing: the mean difference over
 * the minutes in which both were hot.
 *
 * <p>The middle of three firings stands for a time, so that one odd firing says nothing.
 */
final class Companions {
  private static final int FIRINGS = 3;

  /** Minutes that both must have been hot in a firing for it to count. */
  private static final int LEAST_MINUTES = 30;

  /** Firings that are over, since a time, followed another probe, and had this one, too. */
  private static final String FIRINGS_OF =
      "SELECT firing.id, firing.probe FROM firing JOIN wear ON wear.firing = firing.id"
          + " WHERE last_seq IS NOT NULL AND wear.probe = ?1 AND firing.probe <> ?1"
          + " AND wear.over_800_ms >= "
          + LEAST_MINUTES
          + " * 60000 AND "
          + Wear.BEGAN
          + " >= ?2 ORDER BY firing.id";

  private static final String DIFFERENCE =
      """
      WITH hot AS (SELECT probe, boot, first_ms / 60000 AS minute, (min_mc + max_mc) / 2000.0 AS c
        FROM minute WHERE firing = ?1 AND min_mc >= 800000)
      SELECT count(*), avg(own.c - other.c) FROM hot AS own JOIN hot AS other
        ON other.boot = own.boot AND other.minute = own.minute
        WHERE own.probe = ?2 AND other.probe = ?3""";

  private Companions() {}

  private record Firing(long id, int followed) {}

  /** Empty until there are six firings that count, all beside the same probe. */
  static Optional<ProbeDrift> drift(Connection connection, String probe, long sinceWallMs)
      throws SQLException {
    Probes probes = new Probes(connection);
    OptionalInt number = probes.known(probe);
    if (number.isEmpty()) {
      return Optional.empty();
    }
    int own = number.getAsInt();
    List<Firing> firings = firings(connection, own, sinceWallMs);
    if (firings.size() < 2 * FIRINGS) {
      return Optional.empty();
    }
    int beside = firings.get(firings.size() - 1).followed();
    firings.removeIf(firing -> firing.followed() != beside);
    List<Double> earlier = differences(connection, own, firings);
    Collections.reverse(firings);
    List<Double> lately = differences(connection, own, firings);
    if (earlier.size() < FIRINGS || lately.size() < FIRINGS || firings.size() < 2 * FIRINGS) {
      return Optional.empty();
    }
    return Optional.of(
        new ProbeDrift(probes.name(beside), middle(earlier), middle(lately), FIRINGS));
  }

  private static List<Firing> firings(Connection connection, int own, long sinceWallMs)
      throws SQLException {
    List<Firing> firings = new ArrayList<>();
    try (PreparedStatement query = connection.prepareStatement(FIRINGS_OF)) {
      query.setInt(1, own);
      query.setLong(2, sinceWallMs);
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          firings.add(new Firing(row.getLong(1), row.getInt(2)));
        }
      }
    }
    return firings;
  }

  /** °C of the first few that count. */
  private static List<Double> differences(Connection connection, int own, List<Firing> firings)
      throws SQLException {
    List<Double> differences = new ArrayList<>();
    for (Firing firing : firings) {
      if (differences.size() < FIRINGS) {
        OptionalDouble one = difference(connection, own, firing);
        one.ifPresent(differences::add);
      }
    }
    return differences;
  }

  private static OptionalDouble difference(Connection connection, int own, Firing firing)
      throws SQLException {
    try (PreparedStatement query = connection.prepareStatement(DIFFERENCE)) {
      query.setLong(1, firing.id());
      query.setInt(2, own);
      query.setInt(3, firing.followed());
      try (ResultSet row = query.executeQuery()) {
        row.next();
        return row.getInt(1) >= LEAST_MINUTES
            ? OptionalDouble.of(row.getDouble(2))
            : OptionalDouble.empty();
      }
    }
  }

  private static double middle(List<Double> values) {
    return values.stream().sorted().skip(values.size() / 2).findFirst().orElseThrow();
  }
}
