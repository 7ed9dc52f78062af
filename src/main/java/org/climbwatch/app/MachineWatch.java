package org.climbwatch.app;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.climbwatch.alarm.Machine;
import org.climbwatch.alarm.Report;
import org.climbwatch.journal.Journal;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Finds out what no reading shows: whether the record reaches the disk, how much room is left on
 * it, and whether the wall clock can be right. What the core knows already is no news.
 */
final class MachineWatch {
  private static final Logger LOG = LoggerFactory.getLogger(MachineWatch.class);

  private static final long LOOK_EVERY_MS = 60_000;

  /** Free space is news when it has changed by this part. */
  private static final int PART = 8;

  private final Path folder;
  private final Optional<ClockWatch> clock;
  private OptionalLong freeMb = OptionalLong.empty();
  private long lookAtMillis = Long.MIN_VALUE;

  /**
   * @param folder where the record lies
   * @param clock empty where kiln time is not real
   */
  MachineWatch(Path folder, Optional<ClockWatch> clock) {
    this.folder = folder;
    this.clock = clock;
  }

  /** That of this machine. */
  static MachineWatch of(Path folder, KilnTime time) {
    return new MachineWatch(
        folder,
        time.speed() == 1
            ? Optional.of(new ClockWatch(time, new TimeService(Path.of("/"))))
            : Optional.empty());
  }

  /**
   * Looks round. May take as long as the disk does; throws nothing.
   *
   * @param realMillis monotonic; on Linux since the machine started
   */
  void look(long realMillis) {
    clock.ifPresent(one -> one.look(realMillis));
    if (realMillis >= lookAtMillis) {
      lookAtMillis = realMillis + LOOK_EVERY_MS;
      freeMb = freeMb();
    }
  }

  /** Empty where the disk cannot even be asked; then it is not written to either, which is told. */
  private OptionalLong freeMb() {
    File disk = folder.toFile();
    return disk.getTotalSpace() == 0
        ? OptionalLong.empty()
        : OptionalLong.of(disk.getUsableSpace() / 1_000_000);
  }

  /** Tells core and record what is new, at the moment of readings that may raise its alarms. */
  void report(Moment at, Watch watch, Journal journal) {
    for (Report report : news(watch.machine(), journal.failing())) {
      Input.Reported input = new Input.Reported(at, report);
      watch.accept(input);
      journal.append(input);
      LOG.info("{}: {}", report.matter(), report.text());
    }
  }

  private List<Report> news(Machine known, String trouble) {
    List<Report> news = new ArrayList<>(0);
    if (!trouble.isEmpty() || !known.writingTrouble().isEmpty()) {
      Report.Writing writing = new Report.Writing(trouble);
      if (!writing.trouble().equals(known.writingTrouble())) {
        news.add(writing);
      }
    }
    if (freeMb.isPresent() && differs(freeMb.getAsLong(), known.freeMb())) {
      news.add(new Report.FreeSpace(freeMb.getAsLong()));
    }
    clock.ifPresent(one -> news.addAll(one.news(known)));
    return news;
  }

  private static boolean differs(long now, OptionalLong known) {
    return known.isEmpty() || Math.abs(now - known.getAsLong()) > known.getAsLong() / PART;
  }
}
