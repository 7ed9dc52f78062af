package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.climbwatch.journal.Fixture.at;
import static org.climbwatch.journal.Fixture.good;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.watch.Input;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResumePointTest {
  private static final long MINUTE_MS = 60_000;
  private static final long HOUR_MS = 60 * MINUTE_MS;

  @TempDir Path folder;
  private Journal journal;
  private int boot;

  @BeforeEach
  void openTheJournal() {
    journal = Journal.open(folder.resolve("climbwatch.db"), Fixture.CODEC);
    boot = journal.boot("boot-0", 0, Fixture.WALL_MS);
    journal.record(new Input.Configured(at(boot, 0), Fixture.settings("top-hat")), List.of());
  }

  @AfterEach
  void closeIt() {
    journal.close();
  }

  /** One reading a minute over a span of hours. */
  private void minutes(double fromHour, double toHour) {
    for (long ms = (long) (fromHour * HOUR_MS); ms < toHour * HOUR_MS; ms += MINUTE_MS) {
      journal.append(good(at(boot, ms), 20, Phase.IDLE));
    }
  }

  private List<Input> replayed() {
    List<Input> inputs = new ArrayList<>();
    journal.replay(inputs::add);
    return inputs;
  }

  private double firstHourReplayed() {
    List<Input> inputs = replayed();
    assertThat(inputs.get(0)).isInstanceOf(Input.Configured.class);
    return (double) inputs.get(1).at().millis() / HOUR_MS;
  }

  @Test
  void weeksOfAnIdleKilnAreNotReplayed() {
    minutes(1, 24 * 14);

    assertThat(firstHourReplayed()).isBetween(24 * 14 - 3.1, 24 * 14 - 2.9);
  }

  @Test
  void anOpenFiringIsReplayedWithThreeHoursBeforeIt() {
    minutes(1, 100);
    Fixture.begin(journal, at(boot, 100 * HOUR_MS), "glaze");
    minutes(100.1, 110);

    assertThat(firstHourReplayed()).isBetween(96.9, 97.1);
  }

  @Test
  void aFiringThatEndedLongAgoIsNotReplayed() {
    minutes(1, 10);
    Fixture.begin(journal, at(boot, 10 * HOUR_MS), "glaze");
    minutes(10.1, 20);
    Fixture.end(journal, at(boot, 20 * HOUR_MS), "glaze");
    minutes(20.1, 30);

    assertThat(firstHourReplayed()).isBetween(26.9, 27.1);
  }

  @Test
  void aFiringThatEndedJustBeforeIsReplayedToo() {
    minutes(1, 10);
    Fixture.begin(journal, at(boot, 10 * HOUR_MS), "raku 1");
    minutes(10.1, 11);
    Fixture.end(journal, at(boot, 11 * HOUR_MS), "raku 1");
    minutes(11.1, 12);
    Fixture.begin(journal, at(boot, 12 * HOUR_MS), "raku 2");
    minutes(12.1, 13);

    assertThat(firstHourReplayed()).isBetween(6.9, 7.1);
  }

  @Test
  void anAlarmThatStandsIsReplayedFromBeforeItWasRaised() {
    minutes(1, 10);
    journal.announce(
        good(at(boot, 10 * HOUR_MS), 20),
        Fixture.alarm(at(boot, 10 * HOUR_MS), "fault-1", AlarmState.UNACKNOWLEDGED));
    minutes(10.1, 100);

    assertThat(firstHourReplayed()).isBetween(6.9, 7.1);
  }

  @Test
  void oneThatIsShelvedOrLatchedStandsToo() {
    minutes(1, 10);
    journal.announce(
        good(at(boot, 10 * HOUR_MS), 20),
        Fixture.alarm(at(boot, 10 * HOUR_MS), "fault-1", AlarmState.SHELVED));
    minutes(10.1, 14);
    journal.announce(
        good(at(boot, 14 * HOUR_MS), 20),
        Fixture.alarm(at(boot, 14 * HOUR_MS), "fault-1", AlarmState.LATCHED));
    minutes(14.1, 100);

    assertThat(firstHourReplayed()).isBetween(6.9, 7.1);
  }

  @Test
  void anAlarmThatHasReturnedIsNotLookedFor() {
    minutes(1, 10);
    journal.announce(
        good(at(boot, 10 * HOUR_MS), 20),
        Fixture.alarm(at(boot, 10 * HOUR_MS), "fault-1", AlarmState.UNACKNOWLEDGED));
    journal.announce(
        good(at(boot, 11 * HOUR_MS), 20),
        Fixture.alarm(at(boot, 11 * HOUR_MS), "fault-1", AlarmState.NORMAL));
    minutes(11.1, 100);

    assertThat(firstHourReplayed()).isBetween(96.9, 97.1);
  }

  @Test
  void threeHoursAreCountedOverBootsAndThePausesBetweenThem() {
    minutes(1, 10);
    boot = journal.boot("boot-1", 0, Fixture.WALL_MS + (long) (10.5 * HOUR_MS));
    minutes(0, 1);
    boot = journal.boot("boot-2", 0, Fixture.WALL_MS + 12 * HOUR_MS);
    minutes(0, 0.5);

    List<Input> inputs = replayed();

    // 0.5 h, pause 0.5 h, 1 h, pause 0.5 h: half an hour is missing
    assertThat(inputs.get(1).at().boot()).isZero();
    assertThat((double) inputs.get(1).at().millis() / HOUR_MS).isBetween(9.4, 9.6);
  }

  @Test
  void aNightWithoutSupplyIsEnoughToForgetAFiringThatIsOver() {
    Fixture.begin(journal, at(boot, HOUR_MS), "raku");
    minutes(1.1, 3);
    Fixture.end(journal, at(boot, 3 * HOUR_MS), "raku");
    boot = journal.boot("boot-1", 0, Fixture.WALL_MS + 15 * HOUR_MS);
    minutes(0.1, 0.5);

    assertThat(replayed().get(1).at().boot()).isEqualTo(boot);
  }

  @Test
  void aClockThatWasNotSetDoesNotMakeItForget() {
    Fixture.begin(journal, at(boot, HOUR_MS), "raku");
    minutes(1.1, 3);
    Fixture.end(journal, at(boot, 3 * HOUR_MS), "raku");
    boot = journal.boot("boot-1", 0, 0);
    minutes(0.1, 0.5);

    assertThat(replayed()).contains(new Input.Began(at(0, HOUR_MS), "raku"));
  }

  @Test
  void aFiringThatWentOnThroughAPowerCutIsReplayedFromItsBeginning() {
    Fixture.begin(journal, at(boot, HOUR_MS), "glaze");
    minutes(1.1, 3);
    boot = journal.boot("boot-1", 0, Fixture.WALL_MS + 15 * HOUR_MS);
    minutes(0.1, 0.5);

    assertThat(replayed()).contains(new Input.Began(at(0, HOUR_MS), "glaze"));
  }

  @Test
  void theSettingsInForceAtThatPointComeFirstAndLaterOnesInTheirPlace() {
    minutes(1, 10);
    journal.record(
        new Input.Configured(at(boot, 10 * HOUR_MS), Fixture.settings("second")), List.of());
    minutes(10.1, 20);
    journal.record(
        new Input.Configured(at(boot, 20 * HOUR_MS), Fixture.settings("third")), List.of());
    minutes(20.1, 21);

    List<Input> inputs = replayed();

    assertThat(inputs.get(0))
        .isEqualTo(new Input.Configured(at(boot, 10 * HOUR_MS), Fixture.settings("second")));
    assertThat(inputs)
        .contains(new Input.Configured(at(boot, 20 * HOUR_MS), Fixture.settings("third")));
  }

  @Test
  void aNewJournalReplaysAllOfItsLittle() {
    minutes(0, 0.1);

    assertThat(replayed()).hasSize(7);
  }
}
