package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The daemon's process dies by {@code kill -9} at any moment. (That a power cut loses no more rests
 * on synchronous FULL and the disk's honesty, which no test in a process can prove.)
 */
class JournalKillIT {
  private static final long SEED = 20_260_503;
  private static final long MOST_LOST_MS = 5_000;

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("climbwatch.db");
  }

  private Process start(String run, long seed, int readingsToADeed) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            KilledWriter.class.getName(),
            file.toString(),
            run,
            Long.toString(seed),
            Integer.toString(readingsToADeed))
        .redirectOutput(output(run).toFile())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }

  private Path output(String run) {
    return folder.resolve(run + ".out");
  }

  private void runAndKill(String run, long seed, int readingsToADeed, long afterMs)
      throws Exception {
    Process writer = start(run, seed, readingsToADeed);
    try {
      awaitFirstReading(writer, run);
      assertThat(writer.waitFor(afterMs, TimeUnit.MILLISECONDS)).as("died by itself").isFalse();
    } finally {
      writer.destroyForcibly();
      writer.waitFor();
    }
  }

  private void awaitFirstReading(Process writer, String run) throws Exception {
    long giveUpAt = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
    while (said(run, "reading ").isEmpty()) {
      assertThat(writer.waitFor(20, TimeUnit.MILLISECONDS)).as("died by itself").isFalse();
      assertThat(System.nanoTime()).as("no reading in 60 s").isLessThan(giveUpAt);
    }
  }

  private List<String> said(String run, String kind) throws IOException {
    String text = Files.readString(output(run));
    // a line that the kill cut short was not said
    return text.substring(0, text.lastIndexOf('\n') + 1)
        .lines()
        .filter(line -> line.startsWith(kind))
        .map(line -> line.substring(kind.length()))
        .toList();
  }

  private List<String> stored(String sql) throws SQLException {
    List<String> column = new ArrayList<>();
    try (Connection reader = Sqlite.writer(file);
        Statement statement = reader.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      while (row.next()) {
        column.add(row.getString(1));
      }
    }
    return column;
  }

  private void assertNothingDurableIsLost(String run) throws Exception {
    assertThat(stored("PRAGMA integrity_check")).containsExactly("ok");
    assertThat(stored("SELECT text FROM deed WHERE action = 'noted'"))
        .containsAll(said(run, "note "));
    assertThat(stored("SELECT alarm FROM event")).containsAll(said(run, "alarm "));
    List<String> handedOver = said(run, "reading ");
    long newestMs = Long.parseLong(handedOver.get(handedOver.size() - 1));
    String boot = said(run, "boot ").get(0);
    long storedMs =
        Long.parseLong(
            stored("SELECT ifnull(max(ms), 0) FROM reading WHERE boot = " + boot).get(0));
    assertThat(newestMs - storedMs).as("ms of readings lost").isLessThanOrEqualTo(MOST_LOST_MS);
  }

  @Test
  void killedAtManyMomentsItLosesNoDeedNoAlarmAndAtMostFiveSecondsOfReadings() throws Exception {
    Random dice = new Random(SEED);
    List<String> runs = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      String run = "run-" + i;
      runs.add(run);
      runAndKill(run, dice.nextLong(), 20, dice.nextInt(1200));
      for (String each : runs) {
        assertNothingDurableIsLost(each);
      }
    }

    assertThat(stored("SELECT text FROM deed")).as("deeds to lose").hasSizeGreaterThan(20);
    String holes =
        """
        SELECT max(id) - count(*) FROM (SELECT id FROM reading UNION ALL SELECT id FROM deed)""";
    assertThat(stored(holes)).as("holes in the sequence of inputs").containsExactly("0");
  }

  @Test
  void withReadingsOnlyItLosesAtMostFiveSecondsToo() throws Exception {
    runAndKill("readings", SEED, Integer.MAX_VALUE, 7_300);

    assertThat(said("readings", "note ")).isEmpty();
    assertNothingDurableIsLost("readings");
  }

  @Test
  void anotherProcessIsRefusedWhileOneWritesAndWelcomeAfterItsDeath() throws Exception {
    Process writer = start("first", SEED, 20);
    try {
      awaitFirstReading(writer, "first");

      assertThatThrownBy(() -> Journal.open(file, Fixture.CODEC))
          .isInstanceOf(JournalTrouble.class)
          .hasMessageContaining("(process " + writer.pid() + ")");
    } finally {
      writer.destroyForcibly();
      writer.waitFor();
    }
    Journal.open(file, Fixture.CODEC).close();
  }
}
