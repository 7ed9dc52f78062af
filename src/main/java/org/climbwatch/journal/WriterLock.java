package org.climbwatch.journal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Sees to it that one daemon only writes to a journal.
 *
 * <p>A file of its own, locked by the operating system: the lock goes with the process, however it
 * ends. The file stays, since removing it would let two processes lock two files of one name. It
 * says which process holds it.
 */
final class WriterLock implements AutoCloseable {
  private final FileChannel channel;

  private WriterLock(FileChannel channel) {
    this.channel = channel;
  }

  static WriterLock take(Path journal) {
    Path file = Path.of(journal + ".lock");
    FileChannel channel;
    try {
      channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    } catch (IOException cause) {
      throw JournalTrouble.of(
          "lock",
          journal,
          "no file can be written beside it; give the daemon's user write access to its folder",
          cause);
    }
    try {
      if (!locked(channel)) {
        throw inUse(journal, file);
      }
      channel.truncate(0);
      channel.write(
          ByteBuffer.wrap(
              Long.toString(ProcessHandle.current().pid()).getBytes(StandardCharsets.US_ASCII)));
      return new WriterLock(channel);
    } catch (IOException cause) {
      closeQuietly(channel);
      throw JournalTrouble.of("lock", journal, "check the disk: " + cause.getMessage(), cause);
    } catch (JournalTrouble refused) {
      closeQuietly(channel);
      throw refused;
    }
  }

  private static boolean locked(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException heldByThisProcess) {
      return false;
    }
  }

  private static JournalTrouble inUse(Path journal, Path file) throws IOException {
    String holder = Files.readString(file, StandardCharsets.US_ASCII).strip();
    return new JournalTrouble(
        "the journal "
            + journal
            + " is in use by another climbwatch"
            + (holder.isEmpty() ? "" : " (process " + holder + ")")
            + "; stop that one first, or name another --data folder");
  }

  private static void closeQuietly(FileChannel channel) {
    try {
      channel.close();
    } catch (IOException ignored) {
      // nothing was written that could be lost
      return;
    }
  }

  @Override
  public void close() {
    closeQuietly(channel);
  }
}
