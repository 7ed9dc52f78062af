package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.Machine;
import org.climbwatch.alarm.Report;
import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A wall clock that the test turns, and the marks of a time service in a folder of the test's own:
 * those of systemd-timesyncd.service(8), and of a battery clock as in the kernel's
 * Documentation/ABI/testing/sysfs-class-rtc.
 */
class ClockWatchTest {
  private static final long MAY_2026 = 1_777_825_800_000L;
  private static final long MINUTE = 60_000;
  private static final Report NEVER_SET =
      new Report.Clock("the time service has not set it since the machine started");

  @TempDir Path root;
  private long turnedByMillis;
  private ClockWatch watch;
  private Machine known = Machine.UNKNOWN;

  /** Starts to watch a clock that stands at a time now and runs on as the real one. */
  private void begin(long wallMillis) {
    long shift = wallMillis - System.currentTimeMillis();
    KilnTime time = new KilnTime(1, () -> System.currentTimeMillis() + shift + turnedByMillis);
    watch = new ClockWatch(time, new TimeService(root));
  }

  /** One look for each of these times since the machine's start; what is new of them. */
  private List<Report> look(long... upMillis) {
    List<Report> news = new ArrayList<>();
    for (long up : upMillis) {
      watch.look(up);
      for (Report report : watch.news(known)) {
        known = known.with(new Moment(0, up), report);
        news.add(report);
      }
    }
    return news;
  }

  private void serviceRuns() throws IOException {
    Files.createDirectories(root.resolve("run/systemd/timesync"));
  }

  private void serviceHasSetTheClock() throws IOException {
    serviceRuns();
    Files.createFile(root.resolve("run/systemd/timesync/synchronized"));
  }

  private void batteryClockStandsAt(long wallMillis) throws IOException {
    Path clock = Files.createDirectories(root.resolve("sys/class/rtc/rtc0"));
    Files.writeString(clock.resolve("since_epoch"), wallMillis / 1000 + "\n");
  }

  @Test
  void serviceThatNeverHadAnAnswerIsTenMinutesGivenAndThenDoubtedOnce() throws IOException {
    serviceRuns();
    begin(MAY_2026);

    assertThat(look(MINUTE, 5 * MINUTE, 9 * MINUTE)).isEmpty();
    assertThat(look(10 * MINUTE, 11 * MINUTE, 600 * MINUTE)).containsExactly(NEVER_SET);

    serviceHasSetTheClock();
    assertThat(look(601 * MINUTE, 602 * MINUTE)).containsExactly(new Report.Clock(""));
  }

  @Test
  void clockThatWasSetIsTrustedAlsoWhenTheServiceStopsLater() throws IOException {
    serviceHasSetTheClock();
    begin(MAY_2026);
    assertThat(look(20 * MINUTE)).isEmpty();

    Files.delete(root.resolve("run/systemd/timesync/synchronized"));
    assertThat(look(40 * MINUTE)).isEmpty();
  }

  @Test
  void whereNoServiceLeavesMarksNobodyCanTell() {
    begin(MAY_2026);

    assertThat(look(MINUTE, 20 * MINUTE)).isEmpty();
  }

  @Test
  void batteryClockVouchesWhileItGoesAlong() throws IOException {
    serviceRuns();
    batteryClockStandsAt(MAY_2026 + 40_000);
    begin(MAY_2026);
    assertThat(look(20 * MINUTE)).isEmpty();

    // a battery that was empty: it began at 1970
    batteryClockStandsAt(20 * MINUTE);
    assertThat(look(21 * MINUTE)).containsExactly(NEVER_SET);
  }

  @Test
  void dateBeforeTheProgramIsDoubtedWhoeverSetIt() throws IOException {
    serviceHasSetTheClock();
    begin(86_400_000);

    assertThat(look(MINUTE))
        .containsExactly(
            new Report.Clock("it stands before 2025, when this program was not made yet"));
  }

  @Test
  void doubtOfAnEarlierBootStandsUntilThisOneCanTell() throws IOException {
    serviceRuns();
    known = known.with(new Moment(0, 0), NEVER_SET);
    begin(MAY_2026);

    assertThat(look(MINUTE, 9 * MINUTE, 20 * MINUTE)).isEmpty();
  }

  @Test
  void jumpIsToldWithItsSecondsAndOnce() {
    begin(MAY_2026);
    assertThat(look(MINUTE, MINUTE + 1000)).isEmpty();

    turnedByMillis = -7_500_000;
    assertThat(look(MINUTE + 2000, MINUTE + 3000, MINUTE + 4000))
        .containsExactly(new Report.ClockJump(-7500));
  }

  @Test
  void jumpToAndFroIsNone() {
    begin(MAY_2026);
    turnedByMillis = 90_000;
    assertThat(look(1000)).isEmpty();
    turnedByMillis = 0;

    assertThat(look(2000, 3000, 4000)).isEmpty();
  }

  @Test
  void firstSettingByTheServiceIsNoJumpAndAnyLaterOneIs() throws IOException {
    serviceRuns();
    begin(MAY_2026);
    look(1000);
    turnedByMillis = 3_600_000;
    look(2000);
    // the service leaves its mark a moment after it has set the clock
    serviceHasSetTheClock();
    assertThat(look(3000, 4000)).isEmpty();

    turnedByMillis += 3_600_000;
    assertThat(look(5000, 6000)).containsExactly(new Report.ClockJump(3600));
  }

  @Test
  void slowCorrectionIsNoJump() {
    begin(MAY_2026);
    List<Report> news = new ArrayList<>();
    for (int second = 1; second < 3600; second++) {
      turnedByMillis += 100;
      news.addAll(look(second * 1000L));
    }

    assertThat(news).isEmpty();
  }

  @Test
  void fastTimeIsAWorldOfItsOwn() {
    MachineWatch machine = MachineWatch.of(root, new KilnTime(60, () -> 0));

    assertThat(machine).extracting("clock").isEqualTo(Optional.empty());
  }
}
