package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A machine that sleeps in the middle of a firing: the program says so when it is awake again. */
class SleepingDaemonIT {
  private static final String CONFIG =
      """
      [[probe]]
      name = "upper"
      source = "model"
      [probe.model]
      firing = "demo"
      speed = 60
      """;

  @TempDir Path folder;

  @Test
  void daemonThatWasStoppedTellsThatNobodyWatched() throws Exception {
    Path config = Files.writeString(folder.resolve("sleep.toml"), CONFIG);
    Path data = folder.resolve("data");
    try (DaemonProcess daemon = DaemonProcess.run(folder, config, data)) {
      daemon.post("api/v1/firings", "{\"name\":\"Fast\"}");
      daemon.await("readings", now -> now.at("/probes/0/quality").asText().equals("good"));

      daemon.signal("STOP");
      // the sleep itself is what is tested: over 2 s, in which 180 s of kiln time go by
      TimeUnit.SECONDS.sleep(3);
      daemon.signal("CONT");

      JsonNode late = daemon.await("the alarm", now -> alarm(now) != null);
      assertThat(alarm(late).get("message").asText())
          .contains("upper", "took no reading for", "First look at the kiln");
      assertThat(daemon.stop()).isZero();
    }
    try (DaemonProcess again = DaemonProcess.run(folder, config, data)) {
      assertThat(alarm(again.status())).as("after a restart").isNotNull();
    }
  }

  private static JsonNode alarm(JsonNode status) {
    for (JsonNode alarm : status.get("alarms")) {
      if (alarm.get("kind").asText().equals("readings_late")) {
        return alarm;
      }
    }
    return null;
  }
}
