package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A result that did not reach its file must not look like one that did. */
class FullDiskIT {
  @TempDir static Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "convert --emf 40",
        "simulate --firing demo",
        "simulate --firing demo --out /dev/full",
        "firings --help"
      })
  void commandWhoseOutputIsLostEndsWithTwoAndSaysSo(String command) throws Exception {
    refused(command.split(" "));
  }

  @Test
  void replayWhoseOutputIsLostEndsWithTwoAndSaysSo() throws Exception {
    String csv = folder.resolve("firing.csv").toString();
    assertThat(DaemonProcess.command(folder, "simulate", "--firing", "demo", "--out", csv).exit())
        .isZero();

    refused("replay", csv);
  }

  private static void refused(String... arguments) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-jar");
    command.add(System.getProperty("climbwatch.jar", "target/climbwatch.jar"));
    command.addAll(List.of(arguments));
    Process process = new ProcessBuilder(command).redirectOutput(new File("/dev/full")).start();
    String error = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);

    assertThat(process.waitFor()).as(error).isEqualTo(2);
    assertThat(error).startsWith("cannot ").contains("write").hasLineCount(1);
  }
}
