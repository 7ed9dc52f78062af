package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.climbwatch.source.modbus.TransmitterEmulator;
import org.climbwatch.source.scpi.InstrumentEmulator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code check} of the packaged program says of lines that are well and of broken ones. */
class CheckLinesIT {
  private static final String MODBUS =
      """
      [[probe]]
      name = "upper"
      source = "modbus"
      [probe.modbus]
      port = "%s"
      unit = 5
      address = 0
      scale = 0.1
      fault_values = [32767]
      """;
  private static final String SCPI =
      """
      [[probe]]
      name = "upper"
      source = "scpi"
      [probe.scpi]
      port = "%s"
      query = "MEAS:VOLT:DC?"
      gives = "emf_v"
      cold_junction_c = 25
      timeout_s = 1
      silence_s = 2
      """;

  @TempDir Path folder;

  private record Checked(int exit, String output) {}

  @Test
  void aTransmitterThatIsWell() throws Exception {
    try (TransmitterEmulator emulator = TransmitterEmulator.start(port())) {
      emulator.holds(5, 0, 10_042);
      Checked checked = check(MODBUS.formatted(port()));

      assertThat(checked.output()).contains("1004.2 +/-", "Modbus unit 5", "All well");
      assertThat(checked.exit()).isZero();
    }
  }

  @Test
  void twoProbesOnOneLine() throws Exception {
    try (TransmitterEmulator emulator = TransmitterEmulator.start(port())) {
      emulator.holds(5, 0, 10_042);
      emulator.holds(6, 0, 4_321);
      String second = MODBUS.replace("upper", "flue").replace("unit = 5", "unit = 6");
      Checked checked = check(MODBUS.formatted(port()) + second.formatted(port()));

      assertThat(checked.output())
          .contains("1004.2 +/-", "432.1 +/-", "Modbus unit 5", "Modbus unit 6", "All well");
      assertThat(checked.exit()).isZero();
    }
  }

  @Test
  void aTransmitterWithABrokenCouple() throws Exception {
    try (TransmitterEmulator emulator = TransmitterEmulator.start(port())) {
      emulator.holds(5, 0, 32_767);
      Checked checked = check(MODBUS.formatted(port()));

      assertThat(checked.output()).contains("open_circuit x", "Not well");
      assertThat(checked.exit()).isEqualTo(1);
    }
  }

  @Test
  void aTransmitterWithoutThatRegister() throws Exception {
    try (TransmitterEmulator emulator = TransmitterEmulator.start(port())) {
      emulator.holds(5, 100, 10_042);
      Checked checked = check(MODBUS.formatted(port()));

      assertThat(checked.output()).contains("no_value x", "exception 02, illegal data address");
      assertThat(checked.exit()).isEqualTo(1);
    }
  }

  @Test
  void anInstrumentThatIsWell() throws Exception {
    try (InstrumentEmulator emulator = InstrumentEmulator.start(port())) {
      emulator.answers("MEAS:VOLT:DC?", "+4.02760000E-02");
      Checked checked = check(SCPI.formatted(port()));

      assertThat(checked.output()).contains("40.2760", "EXAMPLE,BENCH EMULATOR", "All well");
      assertThat(checked.exit()).isZero();
    }
  }

  @Test
  void anInstrumentThatIsOverloaded() throws Exception {
    try (InstrumentEmulator emulator = InstrumentEmulator.start(port())) {
      emulator.answers("MEAS:VOLT:DC?", "+9.90000000E+37");
      Checked checked = check(SCPI.formatted(port()));

      assertThat(checked.output()).contains("out_of_range x", "Not well");
      assertThat(checked.exit()).isEqualTo(1);
    }
  }

  @Test
  void anInstrumentThatDoesNotKnowTheQuery() throws Exception {
    try (InstrumentEmulator emulator = InstrumentEmulator.start(port())) {
      emulator.raises("-222,\"Data out of range\"");
      Checked checked = check(SCPI.formatted(port()));

      assertThat(checked.output()).contains("no_answer x", "-113 \"Undefined header\"");
      assertThat(checked.exit()).isEqualTo(1);
    }
  }

  private Path port() {
    return folder.resolve("line");
  }

  private Checked check(String config) throws IOException, InterruptedException {
    Path file = Files.writeString(folder.resolve("line.toml"), config);
    Path output = folder.resolve("output.txt");
    List<String> command =
        List.of(
            ProcessHandle.current().info().command().orElse("java"),
            "-jar",
            System.getProperty("climbwatch.jar"),
            "check",
            "--seconds",
            "4",
            "--config",
            file.toString());
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    String text = Files.readString(output, StandardCharsets.UTF_8);
    // kept for whoever writes the notes
    Files.writeString(
        Path.of("target", "check-lines.txt"),
        text.replace(folder.toString(), "/dev/serial/by-id") + "\n",
        StandardCharsets.UTF_8,
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
    return new Checked(process.exitValue(), text);
  }
}
