package org.climbwatch.journal;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;

/**
 * The journal's file cannot be used as it should. The message says what, where and what to do.
 *
 * <p>What could not be written is still held in memory and tried again, unless the method that
 * throws says otherwise.
 */
public final class JournalTrouble extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private static final String NO_ANSWER =
      "the disk does not answer; check the card or disk and its cable";

  private static final String WAITS = ", the readings wait in memory";

  private static final String WAITS_ON_DISK =
      "The readings wait in memory, and what was begun is written if it answers again";

  /** Without the file's place. */
  private final String reason;

  JournalTrouble(String message) {
    super(message);
    reason = message;
  }

  private JournalTrouble(String doing, Path file, String reason, Throwable cause) {
    super("cannot " + doing + " the journal " + file + ": " + reason, cause);
    this.reason = reason;
  }

  /** What is wrong and what to do, without the place of the file: what a record may tell. */
  public String reason() {
    return reason;
  }

  /** Trouble while doing something ({@code "write to"}, {@code "open"}) to the journal. */
  static JournalTrouble of(String doing, Path file, SQLException cause) {
    return new JournalTrouble(doing, file, remedy(file, cause), cause);
  }

  /** A write has been begun and does not end. */
  static JournalTrouble hangs(Path file) {
    String remedy = NO_ANSWER + ". " + WAITS_ON_DISK;
    return new JournalTrouble("write to", file, remedy, null);
  }

  /** The program ends and the disk is still in trouble. */
  static JournalTrouble atTheEnd(Path file, int entries, JournalTrouble why) {
    String cause = why.reason.replace(". " + WAITS_ON_DISK, "").replace(WAITS, "");
    String lost =
        entries == 0
            ? "nothing is lost"
            : entries + " readings, notes and answers that waited in memory are lost";
    return new JournalTrouble("close", file, cause + ". At the end " + lost, why);
  }

  static JournalTrouble of(String doing, Path file, String whatToDo, Throwable cause) {
    return new JournalTrouble(doing, file, whatToDo, cause);
  }

  private static String remedy(Path file, SQLException cause) {
    // the low byte is the primary code: the extended ones only tell where inside SQLite it happened
    int code = cause.getErrorCode() & 0xff;
    for (SQLiteErrorCode known : SQLiteErrorCode.values()) {
      if (known.code == code) {
        return remedy(known).orElse(cause.getMessage());
      }
    }
    return cause.getMessage();
  }

  private static Optional<String> remedy(SQLiteErrorCode code) {
    return switch (code) {
      case SQLITE_FULL -> Optional.of("the disk is full; free some space on it" + WAITS);
      case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH ->
          Optional.of(
              "it may not be written; give the daemon's user write access to the file and its"
                  + " folder, and check that the disk is not mounted read-only");
      case SQLITE_BUSY, SQLITE_LOCKED ->
          Optional.of("another program has locked it; close that program");
      case SQLITE_CANTOPEN ->
          Optional.of(
              "it cannot be opened; check that the file and its folder exist and belong to"
                  + " the daemon's user");
      case SQLITE_NOTADB -> Optional.of("it is no SQLite file; " + ASIDE);
      case SQLITE_CORRUPT -> Optional.of("it is damaged; " + ASIDE);
      case SQLITE_IOERR ->
          Optional.of("the disk gives errors; check the card or disk and its cable");
      default -> Optional.empty();
    };
  }

  static final String ASIDE =
      "move it aside (keep it: `sqlite3 FILE .recover` may save the readings) and start again";
}
