package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.climbwatch.journal.Fixture.at;
import static org.climbwatch.journal.Fixture.good;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Report;
import org.climbwatch.watch.Input;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.Function;

/** A journal whose disk is full, read-only or locked, or hangs: nothing is lost, and it is told. */
class JournalTroubleTest {
  @TempDir Path folder;
  private Path file;
  private Journal journal;

  @BeforeEach
  void openTheJournal() {
    file = folder.resolve("climbwatch.db");
    journal = Journal.open(file, Fixture.CODEC);
    journal.boot("boot-a", 0, Fixture.WALL_MS);
    journal.record(new Input.Configured(at(0, 0), Fixture.settings("top-hat")), List.of());
  }

  @AfterEach
  void closeIt() {
    journal.close();
  }

  private void pragma(String pragma) throws SQLException {
    try (Statement statement = journal.connection().createStatement()) {
      statement.execute("PRAGMA " + pragma);
    }
  }

  private void fillTheDisk() throws SQLException {
    try (Statement statement = journal.connection().createStatement()) {
      statement.executeUpdate("CREATE TABLE filler AS SELECT zeroblob(400000)");
    }
    // SQLite then gives the very error of a full disk, for each page more than it has
    pragma("max_page_count = 1");
  }

  private void freeTheDisk() throws SQLException {
    pragma("max_page_count = 1000000");
  }

  private static String note(int number) {
    return number + " " + "wind from the west, damper moved again. ".repeat(200);
  }

  private List<Input> replayed() {
    List<Input> inputs = new ArrayList<>();
    journal.replay(inputs::add);
    return inputs;
  }

  @Test
  void whenTheDiskIsFullAllWaitsInItsOrderUntilThereIsSpace() throws SQLException {
    fillTheDisk();
    List<Input> expected = new ArrayList<>(List.of(replayedConfiguration()));
    for (int i = 1; i <= 20; i++) {
      Input note = new Input.Noted(at(0, i * 1000L), note(i));
      assertThatThrownBy(() -> journal.record(note, List.of()))
          .isInstanceOf(JournalTrouble.class)
          .hasMessage(
              "cannot write to the journal "
                  + file
                  + ": the disk is full; free some space on it, the readings wait in memory");
      expected.add(note);
      journal.append(good(at(0, i * 1000L + 500), i));
      expected.add(new Input.Measured(good(at(0, i * 1000L + 500), i).reading()));
    }
    assertThat(journal.trouble()).get().asString().contains("the disk is full");

    freeTheDisk();
    journal.commit();

    assertThat(journal.trouble()).isEmpty();
    assertThat(replayed()).isEqualTo(expected);
  }

  /** From now on the thread that writes a reading stays inside SQLite until the latch opens. */
  private CountDownLatch hangTheDisk() throws SQLException {
    CountDownLatch answers = new CountDownLatch(1);
    Function.create(
        journal.connection(),
        "hang",
        new Function() {
          @Override
          protected void xFunc() {
            boolean interrupted = false;
            while (answers.getCount() > 0) {
              try {
                answers.await();
              } catch (InterruptedException again) {
                interrupted = true;
              }
            }
            if (interrupted) {
              Thread.currentThread().interrupt();
            }
          }
        });
    try (Statement statement = journal.connection().createStatement()) {
      statement.execute(
          "CREATE TEMP TRIGGER hang BEFORE INSERT ON main.reading BEGIN SELECT hang(); END");
    }
    journal.patience(50, 100);
    return answers;
  }

  @Test
  void aDiskThatHangsKeepsNobodyWaitingAndLosesNothing() throws SQLException {
    Fixture.begin(journal, at(0, 10), "raku");
    CountDownLatch answers = hangTheDisk();

    journal.announce(
        good(at(0, 1000), 900), Fixture.alarm(at(0, 1000), "stall-1", AlarmState.UNACKNOWLEDGED));
    assertThat(journal.trouble()).get().asString().contains("the disk does not answer");
    journal.append(good(at(0, 2000), 901));
    assertThatThrownBy(() -> journal.record(new Input.Noted(at(0, 2500), "wind"), List.of()))
        .isInstanceOf(JournalTrouble.class);
    assertThat(journal.failing()).contains("the disk does not answer");
    assertThat(journal.hangs()).isTrue();
    assertThat(journal.openFiringId()).hasValue(1);
    assertThatThrownBy(() -> journal.calibrations()).isInstanceOf(JournalTrouble.class);
    journal.append(good(at(0, 3000), 902));

    answers.countDown();
    journal.patience(10_000, 10_000);
    await(() -> settled());

    assertThat(journal.failing()).isEmpty();
    assertThat(journal.hangs()).isFalse();
    assertThat(replayed())
        .extracting(one -> one.at().millis())
        .containsExactly(0L, 10L, 1000L, 2000L, 2500L, 3000L);
  }

  @Test
  void whatADiskThatHangsTakesBeforeTheEndIsNotLost() throws SQLException {
    Fixture.begin(journal, at(0, 10), "raku");
    CountDownLatch answers = hangTheDisk();
    journal.announce(
        good(at(0, 1000), 900), Fixture.alarm(at(0, 1000), "stall-1", AlarmState.UNACKNOWLEDGED));
    journal.append(good(at(0, 2000), 901));
    journal.patience(10_000, 10_000);

    answers.countDown();
    journal.close();

    journal = Journal.open(file, Fixture.CODEC);
    assertThat(replayed()).extracting(one -> one.at().millis()).contains(1000L, 2000L);
  }

  @Test
  void whatIsLostAtTheEndIsSaid() throws SQLException {
    Fixture.begin(journal, at(0, 10), "raku");
    CountDownLatch answers = hangTheDisk();
    journal.announce(
        good(at(0, 1000), 900), Fixture.alarm(at(0, 1000), "stall-1", AlarmState.UNACKNOWLEDGED));
    journal.append(good(at(0, 2000), 901));

    assertThatThrownBy(() -> journal.close())
        .isInstanceOf(JournalTrouble.class)
        .hasMessageContaining("2 readings, notes and answers that waited in memory are lost")
        .hasMessageNotContaining("wait in memory");

    answers.countDown();
    journal = Journal.open(folder.resolve("another.db"), Fixture.CODEC);
  }

  @Test
  void whatAFullDiskLosesAtTheEndIsSaid() throws SQLException {
    fillTheDisk();
    assertThatThrownBy(() -> journal.record(new Input.Noted(at(0, 1000), note(1)), List.of()))
        .isInstanceOf(JournalTrouble.class);

    assertThatThrownBy(() -> journal.close())
        .isInstanceOf(JournalTrouble.class)
        .hasMessageContaining("the disk is full")
        .hasMessageContaining("1 readings, notes and answers that waited in memory are lost")
        .hasMessageNotContaining("wait in memory");
  }

  @Test
  void aDiskThatHangsAtTheVeryEndKeepsNobodyWaiting() throws Exception {
    CountDownLatch answers = hangTheDisk();
    CountDownLatch inside = new CountDownLatch(1);
    Thread hanging =
        new Thread(
            () -> {
              try (Statement statement = journal.connection().createStatement()) {
                inside.countDown();
                statement.execute("SELECT hang()");
              } catch (SQLException closed) {
                inside.countDown(); // the journal closes beneath it once the disk answers
              }
            });
    hanging.start();
    inside.await();
    await(() -> hanging.getState() == Thread.State.WAITING);

    assertThatThrownBy(() -> journal.close())
        .isInstanceOf(JournalTrouble.class)
        .hasMessageContaining("the disk does not answer")
        .hasMessageContaining("nothing is lost");

    answers.countDown();
    hanging.join();
  }

  @Test
  void closingAgainDoesNothing() {
    journal.append(good(at(0, 1000), 900));
    journal.close();
    journal.close();

    journal = Journal.open(file, Fixture.CODEC);
    assertThat(replayed()).extracting(one -> one.at().millis()).contains(1000L);
  }

  private boolean settled() {
    journal.commitIfDue(100_000);
    journal.commitIfDue(106_000);
    return journal.trouble().isEmpty();
  }

  private static void await(java.util.function.BooleanSupplier condition) {
    long until = System.nanoTime() + 30_000_000_000L;
    while (!condition.getAsBoolean()) {
      assertThat(System.nanoTime()).as("time is over").isLessThan(until);
      Thread.onSpinWait();
    }
  }

  private static Input replayedConfiguration() {
    return new Input.Configured(at(0, 0), Fixture.settings("top-hat"));
  }

  @Test
  void anAlarmIsNotHeldUpByAFullDiskAndIsStoredLater() throws SQLException {
    Fixture.begin(journal, at(0, 10), "raku");
    fillTheDisk();
    assertThatThrownBy(() -> journal.record(new Input.Noted(at(0, 20), note(1)), List.of()))
        .isInstanceOf(JournalTrouble.class);

    journal.announce(
        good(at(0, 1000), 900), Fixture.alarm(at(0, 1000), "stall-1", AlarmState.UNACKNOWLEDGED));
    journal.append(good(at(0, 2000), 901));
    assertThat(journal.trouble()).isPresent();
    freeTheDisk();
    journal.commitIfDue(100_000);
    journal.commitIfDue(106_000);

    assertThat(journal.trouble()).isEmpty();
    try (Firings firings = Firings.open(file)) {
      assertThat(firings.one(1).orElseThrow().alarms()).isEqualTo(1);
      assertThat(firings.one(1).orElseThrow().readings()).isEqualTo(2);
    }
  }

  @Test
  void aReportOfTheTroubleItselfWaitsBeforeTheReadingsThatFollow() throws SQLException {
    fillTheDisk();
    assertThat(journal.failing()).isEmpty();
    for (int i = 1; i <= 2; i++) {
      Input note = new Input.Noted(at(0, i), note(i));
      assertThatThrownBy(() -> journal.record(note, List.of())).isInstanceOf(JournalTrouble.class);
    }
    assertThat(journal.failing())
        .isEqualTo("the disk is full; free some space on it, the readings wait in memory");

    Input.Reported report = new Input.Reported(at(0, 1000), new Report.Writing(journal.failing()));
    journal.append(report);
    journal.announce(
        good(at(0, 1000), 900), Fixture.alarm(at(0, 1000), "full-1", AlarmState.UNACKNOWLEDGED));
    freeTheDisk();
    journal.commit();

    assertThat(journal.failing()).isEmpty();
    assertThat(replayed().subList(3, 5))
        .containsExactly(report, new Input.Measured(good(at(0, 1000), 900).reading()));
  }

  @Test
  void aFiringThatBeganOnAFullDiskBeginsOnce() throws SQLException {
    fillTheDisk();
    assertThatThrownBy(() -> Fixture.begin(journal, at(0, 10), note(1)))
        .isInstanceOf(JournalTrouble.class);
    assertThat(journal.openFiringId()).isEmpty();
    freeTheDisk();

    journal.append(good(at(0, 1000), 500));
    journal.commit();

    assertThat(journal.openFiringId()).hasValue(1);
    try (Firings firings = Firings.open(file)) {
      assertThat(firings.list()).hasSize(1);
      assertThat(firings.one(1).orElseThrow().peakC()).hasValue(500);
    }
  }

  @Test
  void aReadOnlyJournalSaysWhatToDo() throws SQLException {
    pragma("query_only = ON");

    assertThatThrownBy(() -> journal.record(new Input.Noted(at(0, 20), "note"), List.of()))
        .isInstanceOf(JournalTrouble.class)
        .hasMessageContaining("give the daemon's user write access");

    pragma("query_only = OFF");
    journal.commit();
    assertThat(replayed()).hasSize(2);
  }

  @Test
  void aJournalThatAnotherProgramHasLockedIsTriedAgain() throws SQLException {
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");

      assertThatThrownBy(() -> journal.record(new Input.Noted(at(0, 20), "note"), List.of()))
          .isInstanceOf(JournalTrouble.class)
          .hasMessageContaining("another program has locked it; close that program");

      statement.execute("ROLLBACK");
    }
    journal.commit();

    assertThat(replayed())
        .containsExactly(replayedConfiguration(), new Input.Noted(at(0, 20), "note"));
  }

  @Test
  void aClosedJournalThatCouldNotWriteSaysSo() throws SQLException {
    Journal full = Journal.open(folder.resolve("full.db"), Fixture.CODEC);
    full.boot("boot-a", 0, 0);
    try (Statement statement = full.connection().createStatement()) {
      statement.execute("PRAGMA query_only = ON");
    }
    full.append(good(at(0, 1000), 20));

    assertThatThrownBy(full::close).isInstanceOf(JournalTrouble.class);

    Journal.open(folder.resolve("full.db"), Fixture.CODEC).close();
  }

  @Test
  void settingsThatCannotBeEncodedDoNotStandInTheWayOfTheRest() {
    Input broken = new Input.Configured(at(0, 5), null);

    assertThatThrownBy(() -> journal.record(broken, List.of()))
        .isInstanceOf(NullPointerException.class);

    journal.record(new Input.Noted(at(0, 20), "note"), List.of());
    assertThat(replayed()).hasSize(2);
  }

  @Test
  void onlyReadingsAreGivenUpWhenMemoryWouldRunOutAndThatIsTold() throws SQLException {
    pragma("query_only = ON");
    assertThatThrownBy(() -> journal.record(new Input.Noted(at(0, 1), "keep me"), List.of()))
        .isInstanceOf(JournalTrouble.class);
    for (int i = 0; i < Waiting.MOST_READINGS + 4; i++) {
      journal.append(good(at(0, 1000L + i), 20));
    }
    pragma("query_only = OFF");
    journal.commit();

    assertThat(journal.trouble())
        .hasValue("5 readings were lost because the journal could not be written");
    List<Input> inputs = replayed();
    assertThat(inputs.get(1)).isEqualTo(new Input.Noted(at(0, 1), "keep me"));
    assertThat(inputs.get(2).at().millis()).isEqualTo(1005);
  }
}
