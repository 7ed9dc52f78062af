package org.climbwatch.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.climbwatch.packaged.DaemonProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An alarm's whole life with the packaged program and a real browser: a made-up evening on which
 * the pottery's kiln passes its limit for an hour, played 60 times as fast.
 */
class AlarmLifeIT {
  private static final Duration PATIENCE = Duration.ofSeconds(90);
  private static final String TITLE = "Too hot";
  private static final String CONFIG =
      """
      [kiln]
      name = "Top hat"
      [[probe]]
      name = "upper"
      source = "recording"
      [probe.recording]
      file = "evening.csv"
      speed = 60
      [alarm.over_temperature]
      limit_c = 1100
      on_delay_s = 5
      off_delay_s = 30
      [alarm.climb_too_fast]
      enabled = false
      [alarm.climb_stalled]
      enabled = false
      [alarm.falling]
      enabled = false
      [alarm.sagging]
      enabled = false
      [alarm.readings_late]
      enabled = false
      """;

  @TempDir Path folder;

  @Test
  void raisedAcknowledgedShelvedBackReturnedAndCleared() throws Exception {
    Files.writeString(folder.resolve("evening.csv"), evening());
    Path config = Files.writeString(folder.resolve("life.toml"), CONFIG);
    Path data = folder.resolve("data");
    try (Browser browser = new Browser(Browser.PHONE)) {
      DaemonProcess daemon = DaemonProcess.run(folder, config, data);
      try {
        assertThat(daemon.post("api/v1/firings", "{\"name\":\"Glaze\"}")).isEqualTo(201);
        StatusPage page = StatusPage.open(browser, daemon.url());
        page.awaitThat("the alarm", PATIENCE, () -> state(page).contains("Not acknowledged"));
        assertThat(page.unwatched()).contains("Climbing too fast", "Climb has stalled");

        page.sign(TITLE, "Ann", "gas half shut");
        page.acknowledge(TITLE);
        page.awaitThat("the answer", PATIENCE, () -> state(page).contains("Acknowledged by Ann"));
        assertThat(state(page)).contains("Note: gas half shut");

        page.shelve(TITLE, "15 min");
        page.awaitThat("the shelf", PATIENCE, () -> state(page).contains("Shelved until"));
        String until = daemon.status().at("/alarms/0/shelved_until").asText();
        daemon.kill();
        daemon = DaemonProcess.run(folder, config, data);

        assertThat(daemon.status().at("/alarms/0/state").asText()).isEqualTo("shelved");
        assertThat(daemon.status().at("/alarms/0/shelved_until").asText()).isEqualTo(until);
        StatusPage again = StatusPage.open(browser, daemon.url());
        again.awaitThat("it again", PATIENCE, () -> state(again).contains("Not acknowledged"));
        again.awaitThat("its return", PATIENCE, () -> state(again).contains("Over by itself"));
        again.acknowledge(TITLE);
        again.awaitThat("the end", PATIENCE, () -> again.alarms().isEmpty());
        assertThat(again.fitsItsWidth()).isTrue();
      } finally {
        daemon.close();
      }
    }
    replayTellsTheSame(config, data);
  }

  /** The daemon's own events, as far as they are the alarm's, and those of its export. */
  private void replayTellsTheSame(Path config, Path data) throws Exception {
    Path export = folder.resolve("export.csv");
    DaemonProcess.Finished exported =
        DaemonProcess.command(
            folder, "export", "latest", "--data", data.toString(), "--out", export.toString());
    assertThat(exported.exit()).as(exported.err()).isZero();
    assertThat(Files.readString(export))
        .contains("\"over_temperature: Ann\ngas half shut\",acknowledged")
        .contains("over_temperature for 900 s: Ann");

    DaemonProcess.Finished replayed =
        DaemonProcess.command(folder, "replay", export.toString(), "--config", config.toString());

    assertThat(replayed.exit()).as(replayed.err()).isZero();
    List<String> states =
        replayed
            .out()
            .lines()
            .filter(line -> line.contains(",alarm,over_temperature,"))
            .map(line -> line.split(",")[3])
            .toList();
    assertThat(states)
        .containsExactly(
            "unacknowledged",
            "acknowledged",
            "shelved",
            "unacknowledged",
            "returned_unacknowledged",
            "normal");
  }

  private static String state(StatusPage page) {
    return page.alarms().stream().filter(alarm -> alarm.contains(TITLE)).findFirst().orElse("");
  }

  /** Five minutes below the limit, an hour above it, three hours below. */
  private static String evening() {
    StringBuilder csv = new StringBuilder("elapsed_s,temperature_c\n");
    for (int s = 0; s < 4 * 3600; s++) {
      // a fired kiln flickers; what stands still to the bit is a fault of its own
      double temperatureC = (s >= 300 && s < 3900 ? 1110 : 1080) + s % 2 * 0.2;
      csv.append(s).append(',').append(temperatureC).append('\n');
    }
    return csv.toString();
  }
}
