package org.climbwatch.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.Machine;
import org.climbwatch.alarm.Report;

/**
 * What speaks against the wall clock, as far as a machine can know by itself: a date before the
 * program, a time service that has never had an answer, a jump.
 */
final class ClockWatch {
  /** The libraries in this program are newer. */
  private static final Instant EARLIEST = Instant.parse("2025-01-01T00:00:00Z");

  /** Time for network and time service after the machine's start. */
  private static final long PATIENCE_MS = 600_000;

  private static final long LOOK_EVERY_MS = 60_000;

  /** A service may set the clock by less without anybody noticing it in the record. */
  private static final long JUMP_MS = 5000;

  private final KilnTime time;
  private final TimeService service;
  private boolean wasSet;
  private Optional<String> doubt = Optional.empty();
  private long offsetMillis;
  private long lookAtMillis = Long.MIN_VALUE;
  private long unexplainedMillis;
  private final List<Report> jumps = new ArrayList<>(0);

  ClockWatch(KilnTime time, TimeService service) {
    this.time = time;
    this.service = service;
    offsetMillis = time.wallOffsetMillis();
    wasSet = service.hasSetTheClock();
  }

  /**
   * To be called at every interval.
   *
   * @param upMillis monotonic; on Linux since the machine started
   */
  void look(long upMillis) {
    long moved = time.wallOffsetMillis() - offsetMillis;
    offsetMillis += moved;
    if (Math.abs(moved) >= JUMP_MS) {
      // judged at the next look: the service leaves its mark after it has set the clock
      unexplainedMillis += moved;
    } else if (unexplainedMillis != 0) {
      boolean bySetting = !wasSet && service.hasSetTheClock();
      if (!bySetting && Math.abs(unexplainedMillis) >= JUMP_MS) {
        jumps.add(new Report.ClockJump(Math.round(unexplainedMillis / 1000.0)));
      }
      unexplainedMillis = 0;
      judge(upMillis);
    } else if (upMillis >= lookAtMillis) {
      lookAtMillis = upMillis + LOOK_EVERY_MS;
      judge(upMillis);
    }
  }

  private void judge(long upMillis) {
    wasSet = wasSet || service.hasSetTheClock();
    long wallMillis = time.millis() + offsetMillis;
    if (wasSet || upMillis >= PATIENCE_MS) {
      doubt = Optional.of(doubt(wallMillis));
    }
  }

  private String doubt(long wallMillis) {
    if (wallMillis < EARLIEST.toEpochMilli()) {
      return "it stands before 2025, when this program was not made yet";
    }
    boolean vouchedFor =
        wasSet || !service.isThere() || service.batteryClockSays(Instant.ofEpochMilli(wallMillis));
    return vouchedFor ? "" : "the time service has not set it since the machine started";
  }

  /**
   * What the core has not been told; nothing is said of a doubt before the service had its time.
   */
  List<Report> news(Machine known) {
    List<Report> news = new ArrayList<>(jumps);
    jumps.clear();
    doubt
        .filter(now -> !now.equals(known.clockDoubt()))
        .ifPresent(now -> news.add(new Report.Clock(now)));
    return news;
  }
}
