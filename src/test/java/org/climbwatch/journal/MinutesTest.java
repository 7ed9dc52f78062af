package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.climbwatch.journal.Fixture.at;
import static org.climbwatch.journal.Fixture.good;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.climbwatch.reading.Fault;
import org.climbwatch.watch.Judged;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The roll-up in the file, and the curve that rests on it. */
class MinutesTest {
  @TempDir Path folder;

  /** A wandering temperature with faults, spikes and pauses. */
  private static Judged look(int second, Random dice) {
    long ms = second * 1000L + (second > 2000 ? 100_000 : 0);
    if (dice.nextInt(97) == 0) {
      return Fixture.faulty(at(0, ms), Fault.NO_ANSWER);
    }
    double temperatureC = 500 + 300 * Math.sin(second / 500.0) + dice.nextInt(1000) / 1000.0;
    return dice.nextInt(89) == 0
        ? Fixture.spike(at(0, ms), temperatureC + 600)
        : good(at(0, ms), temperatureC);
  }

  private List<Rollup.Block> minutesAfter(String name, int restartEverySeconds)
      throws SQLException {
    Path file = folder.resolve(name);
    Random dice = new Random(7);
    Journal journal = open(file);
    Fixture.begin(journal, at(0, 0), "glaze");
    for (int second = 1; second < 4000; second++) {
      journal.append(look(second, dice));
      if (second % restartEverySeconds == 0) {
        journal.close();
        journal = open(file);
      }
    }
    Fixture.end(journal, at(0, 4_200_000), "glaze");
    journal.close();
    try (Connection reader = Sqlite.reader(file)) {
      return Minutes.of(reader, 1, 1);
    }
  }

  private static Journal open(Path file) {
    Journal journal = Journal.open(file, Fixture.CODEC);
    journal.boot("boot-a", 0, Fixture.WALL_MS);
    return journal;
  }

  @Test
  void restartsLeaveTheSameMinutesAsAnUninterruptedRun() throws SQLException {
    List<Rollup.Block> uninterrupted = minutesAfter("whole.db", Integer.MAX_VALUE);

    assertThat(uninterrupted).hasSizeGreaterThan(66);
    assertThat(minutesAfter("restarted.db", 137)).isEqualTo(uninterrupted);
  }

  @Test
  void aLongFiringsCurveFromItsMinutesHasEveryPeakOfItsReadings() {
    Path file = folder.resolve("long.db");
    try (Journal journal = open(file)) {
      Fixture.begin(journal, at(0, 0), "glaze");
      for (int i = 1; i <= 40_000; i++) {
        double temperatureC = 20 + i / 40.0 + (i == 12_345 ? 777 : 0);
        journal.append(good(at(0, i * 1000L), temperatureC));
        journal.commitIfDue(i * 100L);
      }
      journal.commit();
      assertThat(journal.trouble()).isEmpty();

      try (Firings firings = Firings.open(file)) {
        Curve curve = firings.curve(1, 300);

        assertThat(curve.points()).isLessThanOrEqualTo(300).isGreaterThan(200);
        int peak = indexOf(curve, 12_344_000);
        assertThat(curve.temperatureC()[peak]).isEqualTo(20 + 12_345 / 40.0 + 777);
        assertThat(curve.temperatureC()).doesNotContain(Double.NaN);
        assertThat(curve.temperatureC()[curve.points() - 1]).isEqualTo(1020);
        assertThat(curve.elapsedMs()[curve.points() - 1]).isEqualTo(39_999_000);
        assertThat(firings.one(1).orElseThrow().peakC()).hasValue(20 + 12_345 / 40.0 + 777);
      }
    }
  }

  private static int indexOf(Curve curve, long elapsedMs) {
    int index = Arrays.binarySearch(curve.elapsedMs(), elapsedMs);
    assertThat(index).as("a point at %d ms", elapsedMs).isNotNegative();
    return index;
  }
}
