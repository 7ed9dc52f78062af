package org.climbwatch.journal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/**
 * What the file looks like, which version it has, and how an older one is brought up to date.
 *
 * <p>{@code PRAGMA application_id} says that a file is ours, {@code PRAGMA user_version} how many
 * of the {@link #STEPS} it has seen.
 */
final class Schema {
  /** {@code CWJR} in ASCII. */
  static final int APPLICATION_ID = 0x43574A52;

  /**
   * Step i makes version i + 1 from version i; a new file has version 0. A step that has been
   * released is never changed: add one.
   *
   * <p>Suffixes are units: {@code ms} milliseconds, {@code mc} 0.001 °C, {@code cc} 0.01 °C, {@code
   * dc_h} 0.1 °C/h. Numbers for words are those of {@link Codes}.
   */
  static final List<String> STEPS =
      List.of(
          """
          CREATE TABLE boot (
            ordinal INTEGER PRIMARY KEY,
            machine_boot_id TEXT NOT NULL UNIQUE,
            wall_offset_ms INTEGER NOT NULL,  -- wall clock less monotonic clock
            first_seq INTEGER NOT NULL        -- no input of this boot comes before
          ) STRICT;
          CREATE TABLE probe (
            id INTEGER PRIMARY KEY,
            name TEXT NOT NULL UNIQUE
          ) STRICT;
          CREATE TABLE reading (
            id INTEGER PRIMARY KEY,           -- place among all inputs
            boot INTEGER NOT NULL,
            ms INTEGER NOT NULL,              -- monotonic, of that boot
            probe INTEGER NOT NULL,
            kind INTEGER NOT NULL,            -- 0 emf, 1 linearised by the instrument, 2 faulty
            emf_tenth_uv INTEGER,
            linearised_mc INTEGER,
            cold_junction_mc INTEGER,
            temperature_mc INTEGER,           -- as it was shown, as are all below
            uncertainty_cc INTEGER,
            climb_dc_h INTEGER,
            climb_uncertainty_dc_h INTEGER,
            fault INTEGER,                    -- NULL when good
            spike INTEGER NOT NULL,
            phase INTEGER NOT NULL
          ) STRICT;
          CREATE TABLE deed (
            id INTEGER PRIMARY KEY,           -- place among all inputs
            boot INTEGER NOT NULL,
            ms INTEGER NOT NULL,
            action TEXT NOT NULL,
            subject TEXT NOT NULL,
            text TEXT NOT NULL
          ) STRICT;
          CREATE INDEX configured ON deed (id) WHERE action = 'configured';
          CREATE TABLE event (
            id INTEGER PRIMARY KEY,
            seq INTEGER NOT NULL,             -- the input that it followed from
            boot INTEGER NOT NULL,
            ms INTEGER NOT NULL,
            event TEXT NOT NULL,
            subject TEXT NOT NULL,
            state TEXT NOT NULL,
            message TEXT NOT NULL,
            alarm TEXT,                       -- which occurrence, for alarms
            standing INTEGER NOT NULL,        -- how many alarms were not normal after it
            since_boot INTEGER,               -- for a firing that began: what it is dated back to
            since_ms INTEGER,
            by_itself INTEGER
          ) STRICT;
          CREATE INDEX event_seq ON event (seq);
          CREATE TABLE firing (
            id INTEGER PRIMARY KEY,
            name TEXT NOT NULL,
            by_itself INTEGER NOT NULL,
            first_seq INTEGER NOT NULL,
            last_seq INTEGER,                 -- NULL while it is on
            peak_mc INTEGER                   -- NULL while it is on, or never a temperature
          ) STRICT;
          CREATE TABLE remark (
            id INTEGER PRIMARY KEY,
            firing INTEGER NOT NULL,
            wall_ms INTEGER NOT NULL,
            text TEXT NOT NULL
          ) STRICT;
          CREATE INDEX remark_firing ON remark (firing);
          CREATE TABLE minute (
            firing INTEGER NOT NULL,
            first_seq INTEGER NOT NULL,
            last_seq INTEGER NOT NULL,
            boot INTEGER NOT NULL,
            probe INTEGER NOT NULL,
            gap_before INTEGER NOT NULL,
            interval_ms INTEGER NOT NULL,
            first_ms INTEGER NOT NULL, first_mc INTEGER NOT NULL,
            last_ms INTEGER NOT NULL, last_mc INTEGER NOT NULL,
            min_ms INTEGER NOT NULL, min_mc INTEGER NOT NULL,
            max_ms INTEGER NOT NULL, max_mc INTEGER NOT NULL,
            PRIMARY KEY (firing, first_seq)
          ) STRICT, WITHOUT ROWID;
          """,
          """
          ALTER TABLE firing ADD COLUMN probe INTEGER NOT NULL DEFAULT 1;  -- the one it follows
          UPDATE firing SET probe = ifnull(
            (SELECT probe FROM reading WHERE reading.id >= firing.first_seq LIMIT 1), 1);
          """,
          """
          ALTER TABLE reading ADD COLUMN samples INTEGER;  -- looks in it; NULL for one, or a fault
          ALTER TABLE reading ADD COLUMN spread INTEGER;   -- in steps of what was measured
          """,
          """
          CREATE TABLE wear (                 -- what a firing did to each probe, once it is over
            firing INTEGER NOT NULL,
            probe INTEGER NOT NULL,
            peak_mc INTEGER NOT NULL,
            over_800_ms INTEGER NOT NULL,     -- ms at or above so many °C
            over_1000_ms INTEGER NOT NULL,
            over_1100_ms INTEGER NOT NULL,
            over_1200_ms INTEGER NOT NULL,
            PRIMARY KEY (firing, probe)
          ) STRICT, WITHOUT ROWID;
          INSERT INTO wear SELECT firing, probe, max(max_mc),
            sum(CASE WHEN min_mc >= 800000 THEN ms WHEN max_mc < 800000 THEN 0
              ELSE ms * (max_mc - 800000) / (max_mc - min_mc) END),
            sum(CASE WHEN min_mc >= 1000000 THEN ms WHEN max_mc < 1000000 THEN 0
              ELSE ms * (max_mc - 1000000) / (max_mc - min_mc) END),
            sum(CASE WHEN min_mc >= 1100000 THEN ms WHEN max_mc < 1100000 THEN 0
              ELSE ms * (max_mc - 1100000) / (max_mc - min_mc) END),
            sum(CASE WHEN min_mc >= 1200000 THEN ms WHEN max_mc < 1200000 THEN 0
              ELSE ms * (max_mc - 1200000) / (max_mc - min_mc) END)
            FROM (SELECT *, last_ms - first_ms + min(interval_ms, 60000) AS ms FROM minute
              WHERE firing IN (SELECT id FROM firing WHERE last_seq IS NOT NULL))
            GROUP BY firing, probe;
          """,
          """
          CREATE TABLE calibration (
            id INTEGER PRIMARY KEY,
            wall_ms INTEGER NOT NULL,
            probe TEXT NOT NULL,              -- by name: it may never have measured in this file
            who TEXT NOT NULL,
            how TEXT NOT NULL,                -- words with blanks between
            points TEXT NOT NULL,             -- read:add:expanded uncertainty, °C, blanks between
            note TEXT NOT NULL
          ) STRICT;
          CREATE TRIGGER calibration_unaltered BEFORE UPDATE ON calibration
            BEGIN SELECT RAISE(ABORT, 'a calibration record is never altered; add one'); END;
          CREATE TRIGGER calibration_kept BEFORE DELETE ON calibration
            BEGIN SELECT RAISE(ABORT, 'a calibration record is never deleted; add one'); END;
          """);

  private Schema() {}

  /**
   * Refuses a file that is not ours or newer than the steps.
   *
   * @return its version; 0 for a new, empty one
   */
  static int version(Connection connection, Path file, int newest) throws SQLException {
    int applicationId = number(connection, "PRAGMA application_id");
    int version = number(connection, "PRAGMA user_version");
    int objects = number(connection, "SELECT count(*) FROM sqlite_schema");
    boolean unused = applicationId == 0 && version == 0 && objects == 0;
    if (!unused && applicationId != APPLICATION_ID) {
      throw new JournalTrouble(
          file + " is a SQLite file of another program, not a journal; name another --data folder");
    }
    if (version > newest) {
      throw new JournalTrouble(
          String.format(
              "the journal %s has version %d, this program knows up to %d; install the newer"
                  + " program that wrote it, or name another --data folder",
              file, version, newest));
    }
    return version;
  }

  /** Brings the file up to the newest version: all missing steps, or none of them. */
  static void migrate(Connection connection, Path file, List<String> steps) throws SQLException {
    int version = version(connection, file, steps.size());
    if (version == steps.size()) {
      return;
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try {
        for (String step : steps.subList(version, steps.size())) {
          statement.executeUpdate(step);
        }
        statement.execute("PRAGMA application_id = " + APPLICATION_ID);
        statement.execute("PRAGMA user_version = " + steps.size());
        statement.execute("COMMIT");
      } catch (SQLException failed) {
        Sqlite.rollback(connection);
        throw failed;
      }
    }
  }

  private static int number(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }
}
