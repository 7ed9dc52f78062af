package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.climbwatch.journal.Fixture.at;
import static org.climbwatch.journal.Fixture.good;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Firings and hours of a probe. */
class WearTest {
  private static final long HOUR_MS = 3_600_000;

  @TempDir Path folder;

  private Path file() {
    return folder.resolve("journal.sqlite");
  }

  private Journal open(String boot, long monotonicMs) {
    Journal journal = Journal.open(file(), Fixture.CODEC);
    journal.boot(boot, monotonicMs, Fixture.WALL_MS + monotonicMs);
    return journal;
  }

  /** Up by 300 °C/h from 700 to 1300 °C, one reading in ten seconds. */
  private static void climb(Journal journal, long fromMs) {
    for (long ms = 0; ms <= 2 * HOUR_MS; ms += 10_000) {
      journal.append(good(at(0, fromMs + ms), 700 + 300.0 * ms / HOUR_MS));
    }
  }

  private ProbeWear wear(long sinceWallMs) {
    try (Firings firings = Firings.open(file())) {
      return firings.wear(Fixture.PROBE, sinceWallMs);
    }
  }

  @Test
  void hoursAboveEachLimitAreThoseOfTheClimb() {
    try (Journal journal = open("a", 0)) {
      Fixture.begin(journal, at(0, 0), "glaze");
      climb(journal, 1000);
      Fixture.end(journal, at(0, 3 * HOUR_MS), "glaze");
    }

    ProbeWear wear = wear(Long.MIN_VALUE);
    assertThat(wear.firings()).isEqualTo(1);
    assertThat(wear.highFirings()).isEqualTo(1);
    assertThat(wear.hoursOver800C()).isCloseTo(5 / 3.0, within(0.01));
    assertThat(wear.hoursOver1000C()).isCloseTo(1, within(0.01));
    assertThat(wear.hoursOver1100C()).isCloseTo(2 / 3.0, within(0.01));
    assertThat(wear.hoursOver1200C()).isCloseTo(1 / 3.0, within(0.01));
  }

  @Test
  void firingThatIsOnCountsAndLaterCountsTheSame() {
    try (Journal journal = open("a", 0)) {
      Fixture.begin(journal, at(0, 0), "glaze");
      climb(journal, 1000);
      journal.commit();
      ProbeWear on = wear(Long.MIN_VALUE);
      Fixture.end(journal, at(0, 3 * HOUR_MS), "glaze");

      assertThat(on.firings()).isEqualTo(1);
      assertThat(on.hoursOver1000C())
          .isCloseTo(wear(Long.MIN_VALUE).hoursOver1000C(), within(0.02));
    }
  }

  @Test
  void onlyFiringsSinceTheProbeWasPutInCount() {
    try (Journal journal = open("a", 0)) {
      Fixture.begin(journal, at(0, 0), "old couple");
      climb(journal, 1000);
      Fixture.end(journal, at(0, 3 * HOUR_MS), "old couple");
      Fixture.begin(journal, at(0, 48 * HOUR_MS), "new couple");
      journal.append(good(at(0, 48 * HOUR_MS + 1000), 900));
      Fixture.end(journal, at(0, 49 * HOUR_MS), "new couple");
    }

    ProbeWear since = wear(Fixture.WALL_MS + 24 * HOUR_MS);
    assertThat(since.firings()).isEqualTo(1);
    assertThat(since.highFirings()).isZero();
    assertThat(wear(Long.MIN_VALUE).firings()).isEqualTo(2);
    assertThat(wear(Fixture.WALL_MS + 72 * HOUR_MS).firings()).isZero();
  }

  @Test
  void probeThatNeverMeasuredHasNoWear() {
    try (Journal journal = open("a", 0)) {
      Fixture.begin(journal, at(0, 0), "glaze");
    }
    try (Firings firings = Firings.open(file())) {
      assertThat(firings.wear("elsewhere", Long.MIN_VALUE))
          .isEqualTo(new ProbeWear(0, 0, 0, 0, 0, 0));
    }
  }

  /** What an older version kept is summed up when the file is brought up to date. */
  @Test
  void olderFiringsAreSummedUpWhenTheFileIsBroughtUpToDate() throws SQLException {
    try (Journal journal = open("a", 0)) {
      Fixture.begin(journal, at(0, 0), "glaze");
      climb(journal, 1000);
      Fixture.end(journal, at(0, 3 * HOUR_MS), "glaze");
    }
    ProbeWear before = wear(Long.MIN_VALUE);
    int wearStep = 0;
    while (!Schema.STEPS.get(wearStep).contains("CREATE TABLE wear")) {
      wearStep++;
    }
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("DROP TABLE wear");
      statement.executeUpdate(Schema.STEPS.get(wearStep));
    }

    assertThat(wear(Long.MIN_VALUE)).isEqualTo(before);
  }
}
