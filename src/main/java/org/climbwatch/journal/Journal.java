package org.climbwatch.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;

/**
 * The writing side of the journal. One thread owns it; readers open {@link Firings} beside it.
 *
 * <p>Readings wait in memory and are committed at most 5 s late. What the potter did, and readings
 * that raised an event, are committed at once and take all that waits with them. Every commit is
 * synchronised to the disk, so a power cut loses at most those 5 s of readings.
 *
 * <p>When the file cannot be written (full, read-only, locked, or the disk hangs), nothing is
 * dropped: inputs wait, in their order, for the next try, which is made every 5 s. Only readings in
 * excess of {@link Waiting#MOST_READINGS} are given up, the oldest first, and {@link #trouble} says
 * how many.
 */
public final class Journal implements AutoCloseable {
  private final Path file;
  private final SettingsCodec codec;
  private final WriterLock lock;
  private final Writer writer;
  private final Outgoing outgoing;

  private Journal(Path file, SettingsCodec codec, WriterLock lock, Writer writer) {
    this.file = file;
    this.codec = codec;
    this.lock = lock;
    this.writer = writer;
    outgoing = new Outgoing(file, writer);
  }

  /**
   * Loads what {@link #open} needs, so that it can be done beside other work. Touches no journal; a
   * failure is left for the opening to find.
   */
  public static void prepare() {
    Sqlite.load();
  }

  /**
   * Opens the journal for writing; makes folder and file, brings an older file up to date.
   *
   * @throws JournalTrouble when another daemon writes to it, when the file is newer than this
   *     program, another program's, damaged or not writable
   */
  public static Journal open(Path file, SettingsCodec codec) {
    return open(file, codec, Schema.STEPS);
  }

  static Journal open(Path file, SettingsCodec codec, List<String> steps) {
    try {
      Files.createDirectories(Sqlite.folder(file));
    } catch (IOException cause) {
      throw JournalTrouble.of(
          "make the folder of", file, "give the daemon's user write access there", cause);
    }
    WriterLock lock = WriterLock.take(file);
    try {
      return new Journal(file, codec, lock, Writer.open(file, steps));
    } catch (SQLException cause) {
      lock.close();
      throw JournalTrouble.of("open", file, cause);
    } catch (RuntimeException refused) {
      lock.close();
      throw refused;
    }
  }

  /**
   * The ordinal of a boot of the machine, and its offset to wall time, durable on return.
   *
   * <p>To be called before the first input of this run of the program.
   *
   * @param machineBootId what the operating system calls this boot; the id of the newest boot in
   *     the file gives its ordinal again, any other a new one
   * @param monotonicMs monotonic time now, ms
   * @param wallMs wall time now, ms since 1970 UTC
   */
  public int boot(String machineBootId, long monotonicMs, long wallMs) {
    int[] ordinal = new int[1];
    transaction(
        () ->
            ordinal[0] =
                Boots.remember(
                    writer.connection(), machineBootId, wallMs - monotonicMs, writer.nextSeq()));
    return ordinal[0];
  }

  /** Wall time less monotonic time, ms, of the newest boot in the file, when it is that one. */
  public OptionalLong knownOffsetMs(String machineBootId) {
    OptionalLong newest = read(() -> Boots.newestIf(writer.connection(), machineBootId));
    return newest.isPresent()
        ? OptionalLong.of(wallOffsetMs((int) newest.getAsLong()))
        : OptionalLong.empty();
  }

  /**
   * The wall clock was corrected: moves the wall time of a whole boot. Durable on return.
   *
   * @param wallOffsetMs wall time less monotonic time, ms
   */
  public void clockSet(int bootOrdinal, long wallOffsetMs) {
    transaction(
        () ->
            One.change(
                writer.connection(),
                "UPDATE boot SET wall_offset_ms = ? WHERE ordinal = ?",
                wallOffsetMs,
                bootOrdinal));
  }

  /** Takes a reading that raised no event; it is committed at most 5 s later. Never throws. */
  public void append(Judged judged) {
    outgoing.add(new Entry.Look(judged, List.of()));
  }

  /**
   * Takes a reading that raised events: durable on return, unless {@link #trouble} says otherwise.
   *
   * <p>Does not throw when the disk is in trouble, since the alarm must be given all the same.
   */
  public void announce(Judged judged, List<Event> events) {
    outgoing.add(new Entry.Look(judged, List.copyOf(events)));
    outgoing.tryToCommit();
  }

  /** Takes what the program found out; it is committed at most 5 s later. Never throws. */
  public void append(Input.Reported report) {
    outgoing.add(new Entry.Deed(Deeds.row(report, codec), List.of()));
  }

  /**
   * Takes what the potter or the program did, and the events that followed: durable on return.
   *
   * @throws JournalTrouble when it is not on the disk yet; it is kept and tried again
   */
  public void record(Input deed, List<Event> events) {
    // encoded before it queues: what cannot be written must not stand in the way of the rest
    outgoing.add(new Entry.Deed(Deeds.row(deed, codec), List.copyOf(events)));
    commit();
  }

  /**
   * Commits waiting readings before the first of them has waited for 5 s. Never throws.
   *
   * @param monotonicNowMs monotonic real time, ms; to be called after each reading, and at least
   *     once a second
   */
  public void commitIfDue(long monotonicNowMs) {
    outgoing.commitIfDue(monotonicNowMs);
  }

  /**
   * Commits all that waits.
   *
   * @throws JournalTrouble when that fails; all is kept and tried again
   */
  public void commit() {
    outgoing.commit();
  }

  /** A remark on a firing that is over. Durable on return; not kept when it throws. */
  public void remark(long firingId, long wallMs, String text) {
    transaction(() -> Remarks.insert(writer.connection(), firingId, wallMs, text));
  }

  /** Adds what a calibration found. Durable on return; not kept when it throws. */
  public void calibrated(Calibration calibration) {
    transaction(() -> Calibrations.insert(writer.connection(), calibration));
  }

  /** All calibrations of all probes, in the order in which they were recorded. */
  public List<Calibration> calibrations() {
    return read(() -> Calibrations.all(writer.connection()));
  }

  /** The firing that is on. */
  public OptionalLong openFiringId() {
    return outgoing.openFiring();
  }

  /**
   * Hands out the stored inputs from which the core comes to its present state again: the settings
   * then in force, and all inputs from {@link ResumePoint} on, in their order.
   */
  public void replay(Consumer<Input> into) {
    commit();
    try {
      Connection connection = writer.connection();
      new Replay(connection, codec).from(ResumePoint.find(connection, writer.nextSeq()), into);
    } catch (SQLException cause) {
      throw JournalTrouble.of("read", file, cause);
    }
  }

  /** Wall time less monotonic time of a boot, ms; 0 for a boot that is not known. */
  public long wallOffsetMs(int bootOrdinal) {
    String offset = "SELECT wall_offset_ms FROM boot WHERE ordinal = ?";
    return read(() -> One.number(writer.connection(), offset, bootOrdinal)).orElse(0);
  }

  /** Why readings are not being stored, and what to do about it; empty when all is well. */
  public Optional<String> trouble() {
    return outgoing.trouble();
  }

  /**
   * Why nothing reaches the disk, without the place of the file; blank when all is well, and after
   * a single try that failed, since another program may have looked into the file just then.
   */
  public String failing() {
    return outgoing.failing();
  }

  /** Whether a write has been begun and does not end. Readers beside this would hang as well. */
  public boolean hangs() {
    return outgoing.hangs();
  }

  private interface Query<T> {
    T run() throws SQLException;
  }

  private <T> T read(Query<T> query) {
    try {
      outgoing.settle();
      return query.run();
    } catch (SQLException cause) {
      throw JournalTrouble.of("read", file, cause);
    }
  }

  private void transaction(Writer.Work work) {
    outgoing.transaction(work);
  }

  /**
   * Commits what waits and folds the log into the file, which is then complete by itself unless a
   * reader is still open.
   *
   * @throws JournalTrouble when what waited could not be written and is lost
   */
  @Override
  public void close() {
    try {
      outgoing.close();
    } finally {
      lock.close();
    }
  }

  /** For tests that fill the disk. */
  Connection connection() {
    return writer.connection();
  }

  /** For tests that let the disk hang. */
  void patience(long readingsMs, long deedsMs) {
    outgoing.patience(readingsMs, deedsMs);
  }
}
