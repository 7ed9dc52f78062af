package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.Report;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Journal;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real disk below a real journal. */
class MachineWatchTest {
  private static final Configuration CONFIGURATION =
      Configuration.ofText("kiln.toml", "[[probe]]\nsource = \"model\"\n");

  @TempDir Path folder;
  private Path file;
  private Journal journal;
  private int boot;
  private final Watch core = new Watch(CONFIGURATION.watch());
  private MachineWatch machine;

  @BeforeEach
  void open() {
    file = folder.resolve("journal.sqlite");
    journal = Journal.open(file, new TextCodec());
    boot = journal.boot("boot-a", 0, System.currentTimeMillis());
    machine = new MachineWatch(folder, Optional.empty());
  }

  @AfterEach
  void close() {
    journal.close();
  }

  private List<Report> recorded() {
    List<Report> reports = new ArrayList<>();
    journal.replay(
        input -> {
          if (input instanceof Input.Reported reported) {
            reports.add(reported.report());
          }
        });
    return reports;
  }

  private void look(long second) {
    machine.look(second * 1000);
    machine.report(new Moment(boot, second * 1000), core, journal);
  }

  private double freeMb() {
    return folder.toFile().getUsableSpace() / 1e6;
  }

  @Test
  void freeSpaceIsReportedAtTheStartAndThenWhenItHasChangedByAnEighth() {
    look(0);
    look(1);
    look(61);
    assertThat(recorded()).hasSize(1);
    long known = core.machine().freeMb().orElseThrow();
    assertThat((double) known).isCloseTo(freeMb(), within(freeMb() / 8));

    core.accept(new Input.Reported(new Moment(boot, 62_000), new Report.FreeSpace(known / 2)));
    look(63);
    assertThat(recorded()).hasSize(2);
  }

  @Test
  void whatARestartFindsUnchangedIsNotReportedAgain() {
    look(0);
    machine = new MachineWatch(folder, Optional.empty());
    look(30);

    assertThat(recorded()).hasSize(1);
  }

  @Test
  void folderThatIsGoneSaysNothingAboutItsSpace() {
    machine = new MachineWatch(folder.resolve("unmounted"), Optional.empty());
    look(0);

    assertThat(recorded()).isEmpty();
  }

  /** A throw there would end the sampler, and with it all alarms. */
  @Test
  void clockThatIsSetWhileTheJournalIsLockedIsWrittenLater() throws SQLException {
    long[] turnedByMillis = {0};
    KilnTime time = new KilnTime(1, () -> System.currentTimeMillis() + turnedByMillis[0]);
    WallClock clock = new WallClock(time, journal, boot);
    clock.follow(0);
    long before = journal.wallOffsetMs(boot);
    turnedByMillis[0] = 3_600_000;
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement lock = other.createStatement()) {
      lock.execute("BEGIN IMMEDIATE");
      clock.follow(1000);
      assertThat(journal.wallOffsetMs(boot)).isEqualTo(before);
      lock.execute("ROLLBACK");
    }
    clock.follow(2000);
    assertThat(journal.wallOffsetMs(boot)).as("not tried again at once").isEqualTo(before);

    clock.follow(7000);
    assertThat(journal.wallOffsetMs(boot)).isCloseTo(time.wallOffsetMillis(), within(500L));
  }
}
