package org.climbwatch.journal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;

/** How the file is opened: by its one writer, and by any number of readers beside it. */
final class Sqlite {
  /** Longer than any commit or checkpoint takes, shorter than a potter's patience. */
  private static final int BUSY_TIMEOUT_MS = 1000;

  private Sqlite() {}

  /** Unpacks and loads the native library and the driver's classes, which the first use would. */
  static void load() {
    try (Connection connection = common().createConnection("jdbc:sqlite::memory:");
        Statement statement = connection.createStatement()) {
      statement.execute("SELECT 1");
    } catch (SQLException cannotBeLoaded) {
      // opening the journal will say so, and what to do
      return;
    }
  }

  /**
   * The writer: a write-ahead log, synchronised at every commit.
   *
   * <p>FULL also for commits of readings only: with NORMAL a power cut would lose all readings
   * since the last checkpoint, not those of 5 s. The wear follows the number of commits.
   */
  static Connection writer(Path file) throws SQLException {
    Connection connection = common().createConnection("jdbc:sqlite:" + file);
    try (Statement statement = connection.createStatement()) {
      // one by one, since a page size set after WAL would be ignored
      statement.execute("PRAGMA page_size = " + WriteAheadLog.PAGE_BYTES);
      statement.execute("PRAGMA journal_mode = WAL");
      statement.execute("PRAGMA synchronous = FULL");
      return connection;
    } catch (SQLException failed) {
      connection.close();
      throw failed;
    }
  }

  /**
   * Refuses what is no journal of ours, or a newer one, before anything is written to it.
   *
   * @param newest version that this program knows
   */
  static void refuseForeign(Path file, int newest) throws SQLException {
    if (Files.exists(file)) {
      try (Connection connection = reader(file)) {
        Schema.version(connection, file, newest);
      }
    }
  }

  /**
   * A reader, also in another process and beside a running daemon.
   *
   * <p>SQLite wants to make two small files beside a WAL database even to read it. Where the folder
   * may not be written and the daemon is not running, nobody can change the file: it is then read
   * as it stands.
   */
  static Connection reader(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setReadOnly(true);
    boolean alone = !Files.exists(Path.of(file + "-wal")) && !Files.isWritable(folder(file));
    String url =
        alone ? "jdbc:sqlite:file:" + uriPath(file) + "?immutable=1" : "jdbc:sqlite:" + file;
    return config.createConnection(url);
  }

  static void rollback(Connection connection) {
    try (Statement statement = connection.createStatement()) {
      statement.execute("ROLLBACK");
    } catch (SQLException alreadyRolledBack) {
      // SQLite itself ends the transaction on a full disk or an I/O error; then there is none left
      return;
    }
  }

  private static SQLiteConfig common() {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_TIMEOUT_MS);
    // the driver would run one more SELECT after every INSERT
    config.setGetGeneratedKeys(false);
    return config;
  }

  static Path folder(Path file) {
    return file.toAbsolutePath().getParent();
  }

  private static String uriPath(Path file) {
    return file.toAbsolutePath().toUri().getRawPath();
  }
}
