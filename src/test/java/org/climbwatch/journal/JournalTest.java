package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.climbwatch.journal.Fixture.at;
import static org.climbwatch.journal.Fixture.good;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Input;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("deep/climbwatch.db");
  }

  private Journal open() {
    Journal journal = Journal.open(file, Fixture.CODEC);
    journal.boot("boot-a", 0, Fixture.WALL_MS);
    return journal;
  }

  private long storedReadings() {
    try (Connection reader = Sqlite.reader(file)) {
      return One.number(reader, "SELECT count(*) FROM reading").orElseThrow();
    } catch (SQLException unexpected) {
      throw new AssertionError(unexpected);
    }
  }

  @Test
  void readingsAreCommittedBeforeTheFirstHasWaitedFiveSeconds() {
    try (Journal journal = open()) {
      List<Long> stored = new ArrayList<>();

      for (int second = 0; second < 10; second++) {
        journal.append(good(at(0, second * 1000L), 20));
        journal.commitIfDue(50_000 + second * 1000L);
        stored.add(storedReadings());
      }

      // one commit in five seconds, and no reading older than that is left in memory
      assertThat(stored).containsExactly(0L, 0L, 0L, 0L, 5L, 5L, 5L, 5L, 5L, 10L);
    }
  }

  @Test
  void anIdleReadingIsCommittedWithinFiveSecondsAlthoughNoOtherComes() {
    try (Journal journal = open()) {
      journal.append(good(at(0, 0), 20));

      for (long now = 50_000; now <= 54_000; now += 1000) {
        journal.commitIfDue(now);
      }

      assertThat(storedReadings()).isEqualTo(1);
    }
  }

  @Test
  void aDeedIsStoredAtOnceAndTakesWaitingReadingsAlong() {
    try (Journal journal = open()) {
      journal.append(good(at(0, 1000), 20));
      journal.append(good(at(0, 2000), 20));

      journal.record(new Input.Noted(at(0, 2500), "damper in by a thumb"), List.of());

      assertThat(storedReadings()).isEqualTo(2);
    }
  }

  @Test
  void aReadingThatRaisedAnAlarmIsStoredAtOnce() {
    try (Journal journal = open()) {
      journal.announce(
          good(at(0, 1000), 900), Fixture.alarm(at(0, 1000), "stall-1", AlarmState.UNACKNOWLEDGED));

      assertThat(storedReadings()).isEqualTo(1);
      assertThat(journal.trouble()).isEmpty();
    }
  }

  @Test
  void aReadingIsNoDeed() {
    try (Journal journal = open()) {
      Input.Measured reading = new Input.Measured(good(at(0, 1), 20).reading());

      assertThatThrownBy(() -> journal.record(reading, List.of()))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("appended or announced");
    }
  }

  @Test
  void theSameBootOfTheMachineKeepsItsOrdinal() {
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      int first = journal.boot("boot-a", 0, Fixture.WALL_MS);
      int second = journal.boot("boot-b", 0, Fixture.WALL_MS + 1_000_000);

      assertThat(first).isZero();
      assertThat(second).isEqualTo(1);
      assertThat(journal.boot("boot-b", 5000, Fixture.WALL_MS + 5000)).isEqualTo(1);
      assertThat(journal.knownOffsetMs("boot-b")).hasValue(Fixture.WALL_MS);
      assertThat(journal.knownOffsetMs("boot-a")).isEmpty();
    }
  }

  /** As when the same machine has played the kiln model, in fast time, in between. */
  @Test
  void aBootThatComesBackAfterAnotherIsCountedAnewAndLeavesTheRecordWhole() throws IOException {
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      journal.boot("boot-a", 1000, Fixture.WALL_MS + 1000);
      Fixture.begin(journal, at(0, 1000), "three worlds");
      journal.append(good(at(0, 2000), 20));
      int fast = journal.boot("boot-a x60", 60_000, Fixture.WALL_MS + 10_000);
      journal.append(good(at(fast, 61_000), 21));
      int back = journal.boot("boot-a", 20_000, Fixture.WALL_MS + 20_000);
      journal.append(good(at(back, 21_000), 22));
      journal.commit();

      assertThat(List.of(fast, back)).containsExactly(1, 2);
      assertThat(journal.boot("boot-a", 30_000, Fixture.WALL_MS + 30_000)).isEqualTo(back);
    }
    Rows rows = new Rows();
    try (Firings firings = Firings.open(file)) {
      firings.rows(1, rows);
    }
    assertThat(rows.readings).extracting(Rows.Look::wallMs).isSorted().hasSize(3);
    assertThat(rows.readings).extracting(Rows.Look::elapsedMs).isSorted();
  }

  @Test
  void aFiringIsOpenAcrossARestartUntilItEnds() {
    long id;
    try (Journal journal = open()) {
      assertThat(journal.openFiringId()).isEmpty();
      Fixture.begin(journal, at(0, 1000), "spring glaze");
      id = journal.openFiringId().orElseThrow();
    }
    try (Journal journal = open()) {
      assertThat(journal.openFiringId()).hasValue(id);

      Fixture.end(journal, at(0, 9000), "spring glaze");

      assertThat(journal.openFiringId()).isEmpty();
    }
  }

  @Test
  void aFiringDatedBackTakesTheReadingsOfTheWarmingAndTheyAreDryingThen() throws Exception {
    try (Journal journal = open()) {
      for (int minute = 0; minute < 10; minute++) {
        journal.append(good(at(0, minute * 60_000L), 20 + minute, Phase.IDLE));
      }
      journal.announce(
          good(at(0, 600_000), 45, Phase.DRYING),
          Fixture.began(at(0, 600_000), at(0, 300_000), "by itself"));
      journal.append(good(at(0, 601_000), 45.2, Phase.DRYING));
      journal.commit();

      Rows rows = new Rows();
      try (Firings firings = Firings.open(file)) {
        firings.rows(1, rows);

        assertThat(rows.temperatures()).containsExactly(25.0, 26.0, 27.0, 28.0, 29.0, 45.0, 45.2);
        assertThat(rows.readings).extracting(Rows.Look::phase).containsOnly("drying");
        assertThat(rows.readings.get(0).elapsedMs()).isZero();
        assertThat(rows.readings.get(5).elapsedMs()).isEqualTo(300_000);
        assertThat(firings.one(1).orElseThrow().byItself()).isTrue();
        assertThat(firings.curve(1, 100).points()).isEqualTo(7);
      }
    }
  }

  @Test
  void aSummaryTellsWhatAFiringWas() {
    try (Journal journal = open()) {
      journal.append(good(at(0, 500), 18, Phase.IDLE));
      Fixture.begin(journal, at(0, 1000), "spring glaze");
      journal.append(good(at(0, 2000), 400));
      journal.append(good(at(0, 3000), 1204.5));
      journal.append(Fixture.spike(at(0, 4000), 1390));
      journal.append(Fixture.faulty(at(0, 5000), Fault.OPEN_CIRCUIT));
      journal.announce(
          good(at(0, 6000), 1100),
          Fixture.alarm(at(0, 6000), "stall-1", AlarmState.UNACKNOWLEDGED));
      journal.record(
          new Input.Acknowledged(at(0, 6500), "stall-1", "Ama"),
          Fixture.alarm(at(0, 6500), "stall-1", AlarmState.ACKNOWLEDGED));
      try (Firings firings = Firings.open(file)) {
        FiringSummary open = firings.list().get(0);

        assertThat(open.ended()).isEmpty();
        assertThat(open.peakC()).hasValue(1204.5);
        assertThat(open.readings()).isEqualTo(5);
        assertThat(open.duration()).isEqualTo(Duration.ofMillis(5500));
      }

      Fixture.end(journal, at(0, 61_000), "spring glaze");

      try (Firings firings = Firings.open(file)) {
        assertThat(firings.latest()).hasValue(1);
        assertThat(firings.list())
            .containsExactly(
                new FiringSummary(
                    1,
                    "spring glaze",
                    Instant.ofEpochMilli(Fixture.WALL_MS + 1000),
                    Optional.of(Instant.ofEpochMilli(Fixture.WALL_MS + 61_000)),
                    false,
                    OptionalDouble.of(1204.5),
                    5,
                    1,
                    Duration.ofMinutes(1)));
        assertThat(firings.one(7)).isEmpty();
        assertThatThrownBy(() -> firings.events(7)).hasMessage("there is no firing 7");
        assertThat(firings.events(1))
            .extracting(RecordedEvent::event, RecordedEvent::subject, RecordedEvent::state)
            .containsExactly(
                tuple("firing", "spring glaze", "began"),
                tuple("phase", "drying", "entered"),
                tuple("alarm", "climb_stalled", "unacknowledged"),
                tuple("alarm", "climb_stalled", "acknowledged"),
                tuple("firing", "spring glaze", "ended"),
                tuple("phase", "idle", "entered"));
      }
    }
  }

  @Test
  void aRemarkOnAFiringThatIsOverStandsAtItsEnd() throws Exception {
    try (Journal journal = open()) {
      Fixture.begin(journal, at(0, 1000), "raku");
      journal.append(good(at(0, 2000), 400));
      Fixture.end(journal, at(0, 3000), "raku");

      journal.remark(1, Fixture.WALL_MS + 90_000, "two bowls cracked");

      Rows rows = new Rows();
      try (Firings firings = Firings.open(file)) {
        firings.rows(1, rows);
        RecordedDeed remark = firings.deeds(1).get(2);
        assertThat(remark.action()).isEqualTo("remarked");
        assertThat(remark.text()).isEqualTo("two bowls cracked");
        assertThat(remark.elapsedMs()).isEqualTo(88_000);
        assertThat(rows.deeds)
            .extracting(RecordedDeed::action)
            .containsExactly("began", "ended", "remarked");
      }
    }
  }

  @Test
  void aCorrectedClockMovesTheWallTimeOfTheWholeBoot() {
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      int boot = journal.boot("boot-a", 0, 0);
      Fixture.begin(journal, at(boot, 1000), "raku");
      try (Firings firings = Firings.open(file)) {
        assertThat(firings.one(1).orElseThrow().began()).isEqualTo(Instant.ofEpochMilli(1000));

        journal.clockSet(boot, Fixture.WALL_MS);

        assertThat(firings.one(1).orElseThrow().began())
            .isEqualTo(Instant.ofEpochMilli(Fixture.WALL_MS + 1000));
      }
    }
  }

  @Test
  void rowsTellWhatWasShownAndMergeDeedsInTheirPlace() throws Exception {
    try (Journal journal = open()) {
      Fixture.begin(journal, at(0, 1000), "raku");
      journal.append(good(at(0, 2000), 812.375));
      journal.record(new Input.Noted(at(0, 2500), "stacked late"), List.of());
      journal.append(Fixture.faulty(at(0, 3000), Fault.OUT_OF_RANGE));
      journal.append(good(at(0, 4000), -12.5, Phase.COOLING));
      journal.commit();

      Rows rows = new Rows();
      try (Firings firings = Firings.open(file)) {
        firings.rows(1, rows);
      }

      assertThat(rows.order).containsExactly("began", "812375", "noted", "none", "-12500");
      assertThat(rows.readings.get(0))
          .isEqualTo(
              new Rows.Look(
                  Fixture.WALL_MS + 2000,
                  0,
                  "crown",
                  812_375,
                  325,
                  1485,
                  324_950,
                  24_500,
                  "good",
                  "climbing",
                  1,
                  RowSink.NONE,
                  RowSink.NONE));
      assertThat(rows.readings.get(1))
          .isEqualTo(
              new Rows.Look(
                  Fixture.WALL_MS + 3000,
                  1000,
                  "crown",
                  RowSink.NONE,
                  RowSink.NONE,
                  RowSink.NONE,
                  RowSink.NONE,
                  RowSink.NONE,
                  "out_of_range",
                  "climbing",
                  RowSink.NONE,
                  RowSink.NONE,
                  RowSink.NONE));
      assertThat(rows.readings.get(2).emfTenthUv()).isEqualTo(-5000);
      assertThat(rows.readings.get(2).phase()).isEqualTo("cooling");
      assertThat(rows.phasesOfDeeds).containsExactly("climbing", "climbing");
    }
  }

  @Test
  void rowsTellHowManyLooksAReadingHadAndHowFarApartTheyLay() throws Exception {
    try (Journal journal = open()) {
      Fixture.begin(journal, at(0, 1000), "raku");
      journal.append(Fixture.judged(Reading.emf(at(0, 2000), "crown", 40, 25, 10, 0.0123)));
      journal.append(
          Fixture.judged(
              Reading.linearised(at(0, 3000), "crown", 812, OptionalDouble.empty(), 4, 1.5)));
      journal.append(Fixture.judged(Reading.emf(at(0, 4000), "crown", 40, 25, 2, 0)));
      journal.commit();

      Rows rows = new Rows();
      try (Firings firings = Firings.open(file)) {
        firings.rows(1, rows);
      }

      assertThat(rows.readings)
          .extracting(Rows.Look::samples, Rows.Look::spreadTenthUv, Rows.Look::spreadMilliC)
          .containsExactly(
              tuple(10, 123, RowSink.NONE),
              tuple(4, RowSink.NONE, 1500),
              tuple(2, 0, RowSink.NONE));
    }
  }

  @Test
  void elapsedTimeSpansBootsByWallTime() throws Exception {
    try (Journal journal = open()) {
      Fixture.begin(journal, at(0, 1000), "raku");
      journal.append(good(at(0, 2000), 400));
      journal.append(good(at(0, 3000), 410));
      int boot = journal.boot("boot-b", 0, Fixture.WALL_MS + 60_000);
      journal.record(new Input.Resumed(at(boot, 10)), List.of());
      journal.append(good(at(boot, 500), 390));
      journal.commit();

      Rows rows = new Rows();
      try (Firings firings = Firings.open(file)) {
        firings.rows(1, rows);

        assertThat(rows.readings)
            .extracting(Rows.Look::elapsedMs)
            .containsExactly(0L, 1000L, 58_500L);
        assertThat(firings.curve(1, 50).elapsedMs()).containsExactly(0, 1000, 1000, 58_500);
        assertThat(firings.curve(1, 50).temperatureC()).containsExactly(400, 410, Double.NaN, 390);
      }
    }
  }

  @Test
  void aStartOfTheProgramTellsWhetherTheMachineHadStayedOn() throws Exception {
    try (Journal journal = open()) {
      Fixture.begin(journal, at(0, 1000), "raku");
      journal.append(good(at(0, 2000), 400));
      journal.record(new Input.Resumed(at(0, 9000)), List.of());
      int boot = journal.boot("boot-b", 0, Fixture.WALL_MS + 60_000);
      journal.record(new Input.Resumed(at(boot, 10)), List.of());
      journal.append(good(at(boot, 500), 390));
      journal.record(new Input.Resumed(at(boot, 900)), List.of());
      journal.commit();

      try (Firings firings = Firings.open(file)) {
        assertThat(firings.deeds(1))
            .filteredOn(deed -> deed.action().equals("resumed"))
            .extracting(RecordedDeed::text)
            .containsExactly(RecordedDeed.SAME_BOOT, "", RecordedDeed.SAME_BOOT);
      }
    }
  }

  @Test
  void readersSeeWhatIsCommittedWhileTheWriterGoesOn() {
    try (Journal journal = open();
        Firings one = openFirst(journal);
        Firings other = Firings.open(file)) {
      for (int second = 2; second < 200; second++) {
        journal.append(good(at(0, second * 1000L), second));
        journal.commit();
        assertThat(one.one(1).orElseThrow().readings()).isEqualTo(second - 1);
        assertThat(other.curve(1, 500).points()).isEqualTo(second - 1);
      }
    }
  }

  private Firings openFirst(Journal journal) {
    Fixture.begin(journal, at(0, 1000), "raku");
    return Firings.open(file);
  }

  /** What holds against a power cut cannot be seen in a process: so the settings are held here. */
  @Test
  void everyCommitIsSynchronised() throws SQLException {
    try (Journal journal = open()) {
      assertThat(One.number(journal.connection(), "PRAGMA synchronous")).as("FULL").hasValue(2);
      assertThat(
              One.number(
                  journal.connection(),
                  "SELECT 1 FROM pragma_journal_mode WHERE journal_mode = 'wal'"))
          .hasValue(1);
      assertThat(One.number(journal.connection(), "PRAGMA page_size")).hasValue(1024);
    }
  }

  @Test
  void onceClosedTheFileIsCompleteByItself() throws Exception {
    try (Journal journal = open()) {
      Fixture.begin(journal, at(0, 1000), "raku");
      journal.append(good(at(0, 2000), 400));
    }

    Path copy = folder.resolve("carried-away.db");
    Files.copy(file, copy);

    assertThat(Path.of(file + "-wal")).doesNotExist();
    try (Firings firings = Firings.open(copy)) {
      assertThat(firings.one(1).orElseThrow().readings()).isEqualTo(1);
    }
  }
}
