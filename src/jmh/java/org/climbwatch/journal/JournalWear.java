package org.climbwatch.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;

/**
 * How much does the journal write to the disk in an hour?
 *
 * <pre>
 *   mvn -q -o -Pjmh test-compile exec:java \
 *       -Dexec.mainClass=org.climbwatch.journal.JournalWear -Dexec.args=FOLDER
 * </pre>
 *
 * <p>FOLDER must be on a real disk, not in memory. Every commit of that time is made, a few
 * milliseconds after the other: any faster, and the file's time of change would stay the same,
 * which saves the file system the writing that it has to do after 5 s. {@code process} is what this
 * process caused to be written ({@code write_bytes} of {@code /proc/self/io}); {@code device} is
 * what the block device under FOLDER took, file system's own writing and other programs' too (give
 * a device of its own, for instance a loop device).
 */
public final class JournalWear {
  private static final int HOURS = 3;

  private JournalWear() {}

  public static void main(String[] arguments) throws IOException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    report(folder, "firing, 1 reading/s, commit each 5 s", 5, 1000, 720, true);
    report(folder, "firing, 10 readings/s, commit each 5 s", 50, 100, 720, true);
    report(folder, "idle, a reading each 70 s", 1, 70_000, 51, false);
  }

  private static void report(
      Path folder, String what, int readings, int intervalMs, int commitsPerHour, boolean firing)
      throws IOException {
    Path file = folder.resolve("wear-" + readings + ".db");
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      journal.boot("wear", 0, Fixture.WALL_MS);
      Moment start = new Moment(0, 0);
      journal.record(new Input.Configured(start, Fixture.settings("top-hat")), List.of());
      if (firing) {
        Fixture.begin(journal, start, "wear");
      }
      long process = processBytes();
      long device = deviceBytes(folder);
      long committing = 0;
      int number = 0;
      for (int commit = 0; commit < HOURS * commitsPerHour; commit++) {
        for (int i = 0; i < readings; i++) {
          number++;
          Moment at = new Moment(0, (long) number * intervalMs);
          journal.append(Fixture.good(at, number % 1200, firing ? Phase.CLIMBING : Phase.IDLE));
        }
        pause();
        long before = System.nanoTime();
        journal.commit();
        committing += System.nanoTime() - before;
      }
      double perCommitMs = committing / 1e6 / (HOURS * commitsPerHour);
      System.out.printf(
          "%-40s process %5.2f MB/h, device %5.2f MB/h, %.2f ms a commit, file %d kB%n",
          what,
          (processBytes() - process) / 1e6 / HOURS,
          (deviceBytes(folder) - device) / 1e6 / HOURS,
          perCommitMs,
          Files.size(file) / 1000);
    }
    for (String end : List.of("", ".lock")) {
      Files.deleteIfExists(Path.of(file + end));
    }
  }

  private static void pause() {
    try {
      Thread.sleep(12);
    } catch (InterruptedException stopped) {
      throw new IllegalStateException(stopped);
    }
  }

  private static long processBytes() throws IOException {
    try (Stream<String> lines = Files.lines(Path.of("/proc/self/io"))) {
      return lines
          .filter(line -> line.startsWith("write_bytes: "))
          .mapToLong(line -> Long.parseLong(line.substring("write_bytes: ".length())))
          .sum();
    }
  }

  /** Sectors of 512 bytes that the device of the longest matching mount has written. */
  private static long deviceBytes(Path folder) throws IOException {
    String device = Files.getFileStore(folder).name().replace("/dev/", "");
    try (Stream<String> lines = Files.lines(Path.of("/proc/diskstats"))) {
      return lines
          .map(line -> line.strip().split(" +"))
          .filter(columns -> columns[2].equals(device))
          .mapToLong(columns -> 512 * Long.parseLong(columns[9]))
          .sum();
    }
  }
}
