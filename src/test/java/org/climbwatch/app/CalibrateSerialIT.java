package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.SequenceInputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Enumeration;
import java.util.Iterator;
import java.util.List;
import java.util.function.Supplier;
import org.climbwatch.journal.Calibration;
import org.climbwatch.journal.Firings;
import org.climbwatch.source.serial.AmplifierEmulator;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A probe on a real pseudo-terminal goes from the ice bath into boiling water. */
class CalibrateSerialIT {
  @TempDir Path folder;

  /** Answers, each worked out when the one before has been taken. */
  private static InputStream answers(List<Supplier<String>> lines) {
    Iterator<Supplier<String>> each = lines.iterator();
    return new SequenceInputStream(
        new Enumeration<InputStream>() {
          @Override
          public boolean hasMoreElements() {
            return each.hasNext();
          }

          @Override
          public InputStream nextElement() {
            return new ByteArrayInputStream(
                (each.next().get() + "\n").getBytes(StandardCharsets.UTF_8));
          }
        });
  }

  @Test
  void iceAndBoilingWaterMakeACorrectionOfTwoPoints() throws Exception {
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
            """
                .formatted(port));
    try (AmplifierEmulator amplifier = AmplifierEmulator.start(port)) {
      sends(amplifier, 0.6);
      String out =
          calibrate(
              config,
              List.of(
                  () -> "ice",
                  () -> "",
                  () -> "yes",
                  () -> {
                    sends(amplifier, 101.0);
                    return "boiling";
                  },
                  () -> "",
                  () -> "1013.25 hPa",
                  () -> "yes",
                  () -> "done",
                  () -> "Ann",
                  () -> "yes"));
      assertThat(out).contains("Written to");
    }

    try (Firings firings = Firings.open(folder.resolve("data/journal.sqlite"))) {
      Calibration record = Calibration.latest(firings.calibrations(), "upper").orElseThrow();
      List<Correction.Point> points = record.correction().points();
      assertThat(record.how()).isEqualTo("ice boiling");
      assertThat(points).hasSize(2);
      assertThat(points.get(0).addC()).isCloseTo(-0.6, within(0.02));
      // IAPWS-IF97: water boils at 99.974 °C under 101.325 kPa
      assertThat(points.get(1).addC()).isCloseTo(99.974 - 101.0, within(0.02));
    }
  }

  private static void sends(AmplifierEmulator amplifier, double temperatureC) {
    double emfUv = 1000 * ColdJunction.emfMv(ThermocoupleType.K, temperatureC, 25);
    amplifier.sends(seconds -> emfUv, 25, Duration.ofMillis(100));
  }

  private String calibrate(Path config, List<Supplier<String>> lines) {
    InputStream usual = System.in;
    System.setIn(answers(lines));
    try {
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      int exit =
          Main.commandLine()
              .setOut(new PrintWriter(out))
              .setErr(new PrintWriter(err))
              .execute(
                  "check",
                  "--calibrate",
                  "--seconds",
                  "8",
                  "--config",
                  config.toString(),
                  "--data",
                  folder.resolve("data").toString());
      assertThat(exit).as(err + out.toString()).isZero();
      return out.toString();
    } finally {
      System.setIn(usual);
    }
  }
}
