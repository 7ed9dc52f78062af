package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.climbwatch.source.serial.AmplifierEmulator;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program reads a real pseudo-terminal, on which an emulator plays the amplifier. */
class SerialDaemonIT {
  @TempDir Path folder;

  @Test
  void readsALineLosesItAndFindsItAgainUnderAnotherNumber() throws Exception {
    Path port = folder.resolve("usb-amplifier");
    Path config =
        Files.writeString(
            folder.resolve("serial.toml"),
            """
            [[probe]]
            name = "upper"
            source = "serial"
            [probe.serial]
            port = "%s"
            silence_s = 2
            [sampling]
            interval_s = 0.2
            [alarm.readings_stopped]
            on_delay_s = 1
            off_delay_s = 1
            """
                .formatted(port));
    double emfUv = 1000 * ColdJunction.emfMv(ThermocoupleType.K, 1000, 25);
    try (AmplifierEmulator amplifier = AmplifierEmulator.start(port);
        DaemonProcess daemon = DaemonProcess.run(folder, config, folder.resolve("data"))) {
      amplifier.sends(seconds -> emfUv, 25, Duration.ofMillis(100));
      JsonNode good = daemon.await("a thousand degrees", SerialDaemonIT::isGood);
      assertThat(good.at("/probes/0/temperature_c").asDouble()).isBetween(999.9, 1000.1);
      assertThat(good.at("/probes/0/cold_junction_c").asDouble()).isEqualTo(25.0);

      amplifier.unplug();
      JsonNode gone = daemon.await("the loss", now -> quality(now).equals("device_gone"));
      assertThat(gone.at("/probes/0/temperature_c").isNull()).isTrue();
      daemon.await("its alarm", now -> now.toString().contains("readings_stopped"));

      amplifier.replug();
      daemon.await("its return", SerialDaemonIT::isGood);
      daemon.await("the alarm's return", now -> now.toString().contains("returned_unacknowledged"));
      assertThat(daemon.stop()).isZero();
    }
  }

  private static boolean isGood(JsonNode status) {
    return quality(status).equals("good");
  }

  private static String quality(JsonNode status) {
    return status.at("/probes/0/quality").asText();
  }
}
