package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A journal that cannot be written in the middle of a firing, for another process really holds its
 * lock: the daemon tells of it, takes an answer, and writes all of it down afterwards.
 */
class StorageAlarmIT {
  /** Ten times real speed: the on-delay of 30 s and the off-delay of 60 s take 9 s. */
  private static final String CONFIG =
      """
      [[probe]]
      name = "upper"
      source = "model"
      [probe.model]
      firing = "stoneware"
      speed = 10
      """;

  @TempDir Path folder;

  @Test
  void lockedJournalIsAnAlarmThatIsAnsweredAndRecordedAfterwards() throws Exception {
    Path config = Files.writeString(folder.resolve("kiln.toml"), CONFIG);
    Path data = folder.resolve("data");
    String id;
    List<String> told;
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, data)) {
      assertThat(daemon.post("api/v1/firings", "{\"name\":\"stoneware\"}")).isEqualTo(201);
      daemon.await("readings", now -> now.at("/firing/elapsed_s").asInt() > 20);
      try (Connection other =
              DriverManager.getConnection("jdbc:sqlite:" + data.resolve("journal.sqlite"));
          Statement lock = other.createStatement()) {
        lock.execute("BEGIN IMMEDIATE");

        JsonNode raised = alarm(daemon.await("the alarm", now -> alarm(now) != null));
        id = raised.get("id").asText();
        assertThat(raised.get("state").asText()).isEqualTo("unacknowledged");
        assertThat(raised.get("message").asText())
            .contains("nothing has reached the disk", "another program has locked it")
            .doesNotContain(data.toString());
        assertThat(daemon.post("api/v1/alarms/" + id + "/acknowledge", "{\"who\":\"Ann\"}"))
            .isEqualTo(200);
        assertThat(alarm(daemon.status()).get("state").asText()).isEqualTo("acknowledged");
        assertThat(daemon.post("api/v1/firings/1/notes", "{\"text\":\"fan on\"}")).isEqualTo(503);

        lock.execute("ROLLBACK");
      }
      daemon.await("its end", now -> alarm(now) == null);
      JsonNode after = daemon.status();
      assertThat(daemon.text("healthz")).isNotEmpty();
      assertThat(after.at("/probes/0/quality").asText()).isEqualTo("good");
      told = events(daemon.get("api/v1/firings/1/events").get("events"));
      assertThat(daemon.stop()).isZero();
    }
    assertThat(told)
        .containsSubsequence(
            "storage_trouble unacknowledged",
            "storage_trouble acknowledged",
            id + " Ann",
            "storage_trouble normal");
    everythingIsInTheRecord(data);
  }

  /** The way that a recording takes: exported, and run through the core again. */
  private void everythingIsInTheRecord(Path data) throws Exception {
    Path csv = folder.resolve("firing.csv");
    DaemonProcess.Finished export =
        DaemonProcess.command(
            folder, "export", "latest", "--data", data.toString(), "--out", csv.toString());
    assertThat(export.exit()).as(export.err()).isZero();
    List<CSVRecord> rows = rows(Files.readString(csv));
    assertThat(rows)
        .filteredOn(row -> row.get("action").equals("reported"))
        .extracting(row -> row.get("note"))
        .containsExactly(
            "writing: another program has locked it; close that program", "writing: well");
    assertThat(rows).extracting(row -> row.get("note")).contains("fan on");
    List<Double> readings = new ArrayList<>();
    rows.stream()
        .filter(row -> row.get("action").isEmpty())
        .forEach(row -> readings.add(Double.valueOf(row.get("elapsed_s"))));
    for (int i = 1; i < readings.size(); i++) {
      assertThat(readings.get(i) - readings.get(i - 1)).as("at %s s", readings.get(i)).isOne();
    }

    DaemonProcess.Finished replay =
        DaemonProcess.command(
            folder, "replay", csv.toString(), "--config", folder.resolve("kiln.toml").toString());
    assertThat(replay.exit()).as(replay.err()).isZero();
    List<String> again =
        rows(replay.out()).stream()
            .filter(row -> row.get("subject").equals("storage_trouble"))
            .map(row -> row.get("elapsed_s") + " " + row.get("state") + " " + row.get("message"))
            .toList();
    assertThat(again).hasSize(3).isEqualTo(recorded(data));
  }

  private List<String> recorded(Path data) throws Exception {
    DaemonProcess.Finished json =
        DaemonProcess.command(
            folder, "export", "latest", "--format", "json", "--data", data.toString());
    JsonNode events = new com.fasterxml.jackson.databind.ObjectMapper().readTree(json.out());
    return StreamSupport.stream(events.get("events").spliterator(), false)
        .filter(event -> event.get("subject").asText().equals("storage_trouble"))
        .map(
            event ->
                event.get("elapsed_s").asText().replaceAll("\\.?0+$", "")
                    + " "
                    + event.get("state").asText()
                    + " "
                    + event.get("message").asText())
        .toList();
  }

  private static List<CSVRecord> rows(String csv) throws Exception {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    return format.parse(new StringReader(csv)).getRecords();
  }

  private static List<String> events(JsonNode events) {
    return StreamSupport.stream(events.spliterator(), false)
        .map(
            event ->
                event.get("subject").asText()
                    + " "
                    + (event.get("kind").asText().equals("acknowledged")
                        ? event.get("text").asText()
                        : event.get("state").asText()))
        .toList();
  }

  private static JsonNode alarm(JsonNode status) {
    for (JsonNode alarm : status.get("alarms")) {
      if (alarm.get("kind").asText().equals("storage_trouble")) {
        return alarm;
      }
    }
    return null;
  }
}
