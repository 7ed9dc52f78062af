package org.climbwatch.journal;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What is on its way to the disk: waits in memory, is written in batches, and is kept when that
 * fails. A disk that hangs is found out once; until it answers nobody waits for it again.
 */
final class Outgoing {
  /** ms of patience more for each of a batch: what has waited for hours takes its time. */
  private static final long MS_FOR_EACH = 2;

  /** ms: readings wait as well, and a watchdog must not bite. */
  private static final long MOST_PATIENCE_MS = 20_000;

  private final Path file;
  private final Writer writer;
  private final Scribe scribe = new Scribe();
  private final Waiting waiting = new Waiting();
  private final Cadence cadence = new Cadence();
  private JournalTrouble trouble;
  private int failedTries;
  private boolean closed;
  private OptionalLong openFiring;

  /** ms that readings, and so alarms, wait for a disk that hangs. */
  private long patienceMs = 2_000;

  /** ms that somebody who did something waits for it. */
  private long longPatienceMs = 10_000;

  Outgoing(Path file, Writer writer) {
    this.file = file;
    this.writer = writer;
    openFiring = writer.openFiring();
  }

  void add(Entry entry) {
    waiting.add(entry);
  }

  /** Commits before the first of what waits has waited for 5 s. */
  void commitIfDue(long monotonicNowMs) {
    if (cadence.due(monotonicNowMs, !waiting.isEmpty() || scribe.isBusy())) {
      tryToCommit();
    }
  }

  /** Commits all that waits; whether that went well {@link #trouble} says. */
  void tryToCommit() {
    tryToCommit(patienceMs);
  }

  /**
   * Commits all that waits, with the patience of somebody who did something.
   *
   * @throws JournalTrouble when that fails; all is kept and tried again
   */
  void commit() {
    tryToCommit(longPatienceMs);
    if (trouble != null) {
      throw trouble;
    }
  }

  private void tryToCommit(long withinMs) {
    cadence.tried();
    try {
      // who has found the disk hanging once does not wait for it again
      settle();
      if (!waiting.isEmpty()) {
        Collection<Entry> batch = waiting.hand();
        scribe.begin(() -> writer.write(batch));
        settle(Math.min(withinMs + batch.size() * MS_FOR_EACH, MOST_PATIENCE_MS));
      }
      trouble = null;
      failedTries = 0;
    } catch (JournalTrouble hangs) {
      trouble = hangs;
      failedTries++;
    } catch (SQLException cause) {
      trouble = JournalTrouble.of("write to", file, cause);
      failedTries++;
    }
  }

  /**
   * Does some work in a transaction of its own, behind all that waits.
   *
   * @throws JournalTrouble when that fails
   */
  void transaction(Writer.Work work) {
    commit();
    try {
      scribe.begin(() -> writer.inTransaction(work));
      settle(longPatienceMs);
    } catch (SQLException cause) {
      throw JournalTrouble.of("write to", file, cause);
    }
  }

  /**
   * Takes note of how a late writing has ended.
   *
   * @throws JournalTrouble while it has not
   * @throws SQLException when it has failed; it then waits again
   */
  void settle() throws SQLException {
    settle(0);
  }

  private void settle(long withinMs) throws SQLException {
    if (!scribe.isBusy()) {
      return;
    }
    try {
      if (!scribe.ends(withinMs)) {
        throw JournalTrouble.hangs(file);
      }
      waiting.written();
    } catch (JournalTrouble hangs) {
      throw hangs;
    } catch (SQLException | RuntimeException | Error failed) {
      waiting.takeBack();
      throw failed;
    }
    openFiring = writer.openFiring();
  }

  /** The firing that is on, as far as it is on the disk. */
  OptionalLong openFiring() {
    return openFiring;
  }

  /** Why readings are not being stored; empty when all is well. */
  Optional<String> trouble() {
    return waiting
        .lost()
        .map(lost -> lost + (trouble == null ? "" : "; " + trouble.getMessage()))
        .or(() -> Optional.ofNullable(trouble).map(Throwable::getMessage));
  }

  /** Whether a write has been begun and does not end. */
  boolean hangs() {
    return scribe.isBusy();
  }

  /** The same without the place of the file; blank after a single try that failed. */
  String failing() {
    return failedTries > 1 ? trouble.reason() : "";
  }

  /**
   * Commits what waits and closes the file, unless the disk hangs. Closing again does nothing.
   *
   * @throws JournalTrouble when what waited could not be written and is lost, or the disk hangs
   */
  void close() {
    if (closed) {
      return;
    }
    closed = true;
    try {
      if (lateOneEnds()) {
        tryToCommit(longPatienceMs);
      }
      if (!scribe.isBusy()) {
        scribe.begin(writer::close); // it folds the log into the file: a disk may hang at that, too
        settle(longPatienceMs);
      }
    } catch (JournalTrouble hangs) {
      trouble = hangs;
    } catch (SQLException cause) {
      trouble = JournalTrouble.of("close", file, cause);
    } finally {
      scribe.close();
    }
    if (trouble != null) {
      throw JournalTrouble.atTheEnd(file, waiting.size(), trouble);
    }
  }

  /** At the end there is time to wait for a disk that hangs; whether it answers. */
  private boolean lateOneEnds() {
    try {
      settle(longPatienceMs);
      return true;
    } catch (JournalTrouble hangs) {
      return false;
    } catch (SQLException failed) {
      return true; // it waits again, and is tried once more
    }
  }

  /** For tests that let the disk hang. */
  void patience(long readingsMs, long deedsMs) {
    patienceMs = readingsMs;
    longPatienceMs = deedsMs;
  }
}
