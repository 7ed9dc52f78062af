package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.File;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged jar as a user runs it, on the kiln model. */
class PackagedProgramIT {
  private static final String FAST =
      """
      [kiln]
      name = "test kiln"
      [[probe]]
      name = "upper"
      source = "model"
      [probe.model]
      firing = "demo"
      seed = 7
      speed = 600
      [alarm.climb_too_fast]
      limit_c_per_h = 800
      """;

  @TempDir Path folder;

  @Test
  void alarmIsRaisedAcknowledgedRecordedAndReplayedAlike() throws Exception {
    Path config = Files.writeString(folder.resolve("test.toml"), FAST);
    Path data = folder.resolve("data");
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, data)) {
      JsonNode status =
          daemon.await("the stall", now -> hasAlarm(now, "climb_stalled", "unacknowledged"));
      long firing = status.at("/firing/id").asLong();
      String alarm = status.at("/alarms/0/id").asText();
      assertThat(
              daemon.post(
                  "api/v1/firings/" + firing + "/notes", "{\"text\":\"=frost, \\\"thick\\\"\"}"))
          .isEqualTo(201);
      assertThat(daemon.post("api/v1/alarms/" + alarm + "/acknowledge", "{\"who\":\"Ann\"}"))
          .isBetween(200, 204);
      assertThat(hasAlarm(daemon.status(), "climb_stalled", "acknowledged")).isTrue();
      assertThat(daemon.post("api/v1/alarms/" + alarm + "/acknowledge", "{\"who\":\"Ben\"}"))
          .as("pressed again, on another phone")
          .isEqualTo(200);
      String more = "{\"who\":\"Ben\",\"note\":\"burner 2 is out\"}";
      assertThat(daemon.post("api/v1/alarms/" + alarm + "/acknowledge", more)).isEqualTo(200);
      daemon.await("the end", now -> now.get("firing").isNull());

      String csv = daemon.text("api/v1/firings/" + firing + "/export.csv");
      assertThat(daemon.stop()).isZero();

      assertThat(rows(csv).stream().filter(row -> row.get("action").equals("acknowledged")))
          .as("answered once, and what a second person had to say to it")
          .extracting(row -> row.get("note"))
          .satisfiesExactly(
              first -> assertThat(first).contains("Ann"),
              second -> assertThat(second).contains("Ben").contains("burner 2 is out"));
      checkCsv(csv);
      checkReplay(config, data, csv);
    }
  }

  private static boolean hasAlarm(JsonNode status, String kind, String state) {
    for (JsonNode alarm : status.get("alarms")) {
      if (alarm.get("kind").asText().equals(kind) && alarm.get("state").asText().equals(state)) {
        return true;
      }
    }
    return false;
  }

  private static void checkCsv(String csv) throws Exception {
    List<CSVRecord> rows = rows(csv);

    assertThat(rows.size()).isGreaterThan(20_000);
    assertThat(rows.get(0).get("elapsed_s")).isEqualTo("0");
    assertThat(rows).anySatisfy(row -> assertThat(row.get("note")).isEqualTo("'=frost, \"thick\""));
    double last = -1;
    double peak = 0;
    for (CSVRecord row : rows) {
      double elapsed = Double.parseDouble(row.get("elapsed_s"));
      assertThat(elapsed).isGreaterThanOrEqualTo(last);
      last = elapsed;
      if (row.get("quality").equals("good")) {
        peak = Math.max(peak, Double.parseDouble(row.get("temperature_c")));
      }
    }
    assertThat(peak).isBetween(1000.0, 1200.0);
  }

  private void checkReplay(Path config, Path data, String csv) throws Exception {
    Path file = Files.writeString(folder.resolve("firing.csv"), csv);
    DaemonProcess.Finished replay =
        DaemonProcess.command(folder, "replay", file.toString(), "--config", config.toString());
    assertThat(replay.exit()).as(replay.err()).isZero();
    DaemonProcess.Finished json =
        DaemonProcess.command(
            folder, "export", "latest", "--format", "json", "--data", data.toString());
    assertThat(json.exit()).as(json.err()).isZero();
    List<String> live = new ArrayList<>();
    for (JsonNode event :
        new com.fasterxml.jackson.databind.ObjectMapper().readTree(json.out()).get("events")) {
      live.add(
          seconds(event.get("elapsed_s").asText())
              + "|"
              + event.get("event").asText()
              + "|"
              + event.get("subject").asText()
              + "|"
              + event.get("state").asText()
              + "|"
              + event.get("message").asText());
    }
    List<String> replayed = new ArrayList<>();
    for (CSVRecord row : rows(replay.out())) {
      replayed.add(
          seconds(row.get("elapsed_s"))
              + "|"
              + row.get("event")
              + "|"
              + row.get("subject")
              + "|"
              + row.get("state")
              + "|"
              + row.get("message"));
    }
    assertThat(live).hasSizeGreaterThan(4);
    // the record says when the begin was noticed, a replay when it was
    assertThat(withoutTime(replayed.get(0))).isEqualTo(withoutTime(live.get(0)));
    assertThat(replayed.subList(1, replayed.size())).isEqualTo(live.subList(1, live.size()));
  }

  private static String withoutTime(String line) {
    return line.substring(line.indexOf('|'));
  }

  private static String seconds(String decimal) {
    return new BigDecimal(decimal).setScale(3).toPlainString();
  }

  /** A stranger copies the help's own example into a shell. */
  @Test
  void exampleOfTheHelpRunsAsItStands() throws Exception {
    String help = DaemonProcess.command(folder, "convert", "--help").out();
    List<String> lines = help.lines().toList();
    int first = lines.indexOf("Examples") + 1;
    int prints = first;
    while (!lines.get(prints).strip().startsWith("prints ")) {
      prints++;
    }
    ProcessBuilder shell =
        new ProcessBuilder("sh", "-c", String.join("\n", lines.subList(first, prints)));
    String java = Path.of(System.getProperty("java.home"), "bin").toString();
    shell.environment().merge("PATH", java, (old, own) -> own + File.pathSeparator + old);

    Process process = shell.redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

    assertThat(help).startsWith("Usage: java -jar ");
    assertThat("prints " + printed.strip()).isEqualTo(lines.get(prints).strip());
  }

  private static List<CSVRecord> rows(String csv) throws Exception {
    return CSVFormat.RFC4180
        .builder()
        .setHeader()
        .setSkipHeaderRecord(true)
        .get()
        .parse(new StringReader(csv))
        .getRecords();
  }
}
