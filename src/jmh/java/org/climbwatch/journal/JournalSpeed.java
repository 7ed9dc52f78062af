package org.climbwatch.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;

/**
 * How long do the reader's answers take among 500 firings, one of which is 24 h at 10 readings/s?
 *
 * <pre>
 *   mvn -q -o -Pjmh test-compile exec:java \
 *       -Dexec.mainClass=org.climbwatch.journal.JournalSpeed -Dexec.args=FOLDER
 *   sqlite3 -csv FOLDER/speed.db "SELECT ms, ms, probe, temperature_mc, uncertainty_cc, \
 *       climb_dc_h, emf_tenth_uv, cold_junction_mc, fault, phase FROM reading \
 *       WHERE id BETWEEN (SELECT first_seq FROM firing WHERE id = 250) \
 *       AND (SELECT last_seq FROM firing WHERE id = 250)" | wc -c
 * </pre>
 *
 * <p>The file is made at the first run and used again.
 */
public final class JournalSpeed {
  private static final int FIRINGS = 500;
  private static final int BIG = 250;

  private JournalSpeed() {}

  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[0]).resolve("speed.db");
    if (!Files.exists(file)) {
      make(file);
    }
    for (int run = 0; run < 7; run++) {
      try (Firings firings = timedOpen(file)) {
        time("list", () -> firings.list().size());
        time("curve to 1000", () -> firings.curve(BIG, 1000).points());
        time("small curve to 1000", () -> firings.curve(BIG + 1, 1000).points());
        time("rows", () -> count(firings));
      }
      try (Journal journal = Journal.open(file, Fixture.CODEC)) {
        long[] inputs = {0};
        time(
            "replay of 24 h at 1/s",
            () -> {
              journal.replay(input -> inputs[0]++);
              return inputs[0];
            });
      }
      System.out.println();
    }
  }

  private interface Task {
    long run() throws IOException;
  }

  private static void time(String what, Task task) throws IOException {
    long began = System.nanoTime();
    long answer = task.run();
    System.out.printf("%s: %.1f ms (%d)  ", what, (System.nanoTime() - began) / 1e6, answer);
  }

  private static Firings timedOpen(Path file) {
    long began = System.nanoTime();
    Firings firings = Firings.open(file);
    System.out.printf("open: %.1f ms  ", (System.nanoTime() - began) / 1e6);
    return firings;
  }

  private static long count(Firings firings) throws IOException {
    long[] sum = {0, 0};
    firings.rows(
        BIG,
        new RowSink() {
          @Override
          public void reading(
              long wallMs,
              long elapsedMs,
              String probe,
              int temperatureMilliC,
              int uncertaintyCentiC,
              int climbDeciCPerHour,
              int emfTenthUv,
              int coldJunctionMilliC,
              String quality,
              String phase,
              int samples,
              int spreadTenthUv,
              int spreadMilliC) {
            sum[0]++;
            sum[1] += temperatureMilliC + elapsedMs;
          }

          @Override
          public void deed(RecordedDeed deed, String phase) {
            sum[1]++;
          }
        });
    return sum[0];
  }

  private static void make(Path file) {
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      journal.boot("speed", 0, Fixture.WALL_MS);
      long ms = 0;
      journal.record(
          new Input.Configured(new Moment(0, ms), Fixture.settings("top-hat")), List.of());
      for (int firing = 1; firing <= FIRINGS; firing++) {
        boolean last = firing == FIRINGS;
        int readings = firing == BIG ? 864_000 : last ? 86_400 : 7_200;
        int intervalMs = firing == BIG ? 100 : 1000;
        ms += 4 * 3_600_000;
        Fixture.begin(journal, new Moment(0, ms), "firing " + firing);
        for (int i = 0; i < readings; i++) {
          ms += intervalMs;
          journal.append(Fixture.good(new Moment(0, ms), 600 + 500 * Math.sin(i / 9000.0)));
          if (i % 10_000 == 0) {
            journal.commit();
          }
        }
        if (!last) {
          Fixture.end(journal, new Moment(0, ms), "firing " + firing);
        }
      }
    }
  }
}
