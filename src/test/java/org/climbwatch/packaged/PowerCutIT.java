package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code kill -9} in the middle of a firing, again and again, at moments drawn from a seed. */
class PowerCutIT {
  private static final int KILLS = 50;
  private static final long SEED = 20_261_125;

  /** One reading in a tenth of a second, so that a kill falls between any two writes. */
  private static final String CONFIG =
      """
      [[probe]]
      name = "upper"
      source = "model"
      [probe.model]
      firing = "stoneware"
      speed = 60
      [alarm.over_temperature]
      limit_c = 60
      """;

  @TempDir Path folder;

  @Test
  void nothingThatWasAnsweredIsLostAndTheFiringGoesOn() throws Exception {
    Path config = Files.writeString(folder.resolve("cut.toml"), CONFIG);
    Path data = folder.resolve("data");
    Random random = new Random(SEED);
    List<String> notes = new ArrayList<>();
    String alarmSeen = "";
    long firing = -1;
    for (int kill = 0; kill < KILLS; kill++) {
      try (DaemonProcess daemon = DaemonProcess.run(folder, config, data)) {
        JsonNode status = daemon.status();
        if (firing < 0) {
          assertThat(daemon.post("api/v1/firings", "{\"name\":\"cut\"}")).isEqualTo(201);
          firing = daemon.status().at("/firing/id").asLong();
        } else {
          assertThat(status.at("/firing/id").asLong()).as("after kill %d", kill).isEqualTo(firing);
        }
        if (!alarmSeen.isEmpty()) {
          assertThat(ids(status)).as("after kill %d, seed %d", kill, SEED).contains(alarmSeen);
        }
        String note = "note " + kill;
        assertThat(
                daemon.post("api/v1/firings/" + firing + "/notes", "{\"text\":\"" + note + "\"}"))
            .isEqualTo(201);
        notes.add(note);
        TimeUnit.MILLISECONDS.sleep(random.nextInt(400));
        List<String> ids = ids(daemon.status());
        alarmSeen = ids.isEmpty() ? alarmSeen : ids.get(0);
        daemon.kill();
      }
      checkFile(data.resolve("journal.sqlite"));
    }
    assertThat(alarmSeen).isNotEmpty();
    DaemonProcess.Finished export =
        DaemonProcess.command(folder, "export", "latest", "--data", data.toString());
    assertThat(export.exit()).as(export.err()).isZero();
    for (String note : notes) {
      assertThat(export.out()).contains("," + note + ",noted");
    }
  }

  private static List<String> ids(JsonNode status) {
    List<String> ids = new ArrayList<>();
    status.get("alarms").forEach(alarm -> ids.add(alarm.get("id").asText()));
    return ids;
  }

  private static void checkFile(Path file) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery("PRAGMA integrity_check")) {
      assertThat(answer.next()).isTrue();
      assertThat(answer.getString(1)).isEqualTo("ok");
    }
  }
}
