package org.climbwatch.app.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ProbeErrors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConfigurationTest {
  private static final Path SAMPLE = Path.of("config/climbwatch.toml");
  private static final DecimalFormatSymbols POINT = DecimalFormatSymbols.getInstance(Locale.ROOT);

  @Test
  void sampleFileLoads() {
    Configuration sample = Configuration.load(SAMPLE);

    assertThat(sample.source()).isInstanceOf(ProbeSource.Serial.class);
    assertThat(sample.watch().targetC()).isEqualTo(OptionalDouble.of(1270));
    assertThat(sample.server().loopbackOnly()).isTrue();
  }

  @Test
  void demoFileLoadsAndRunsSixtyTimesAsFast() {
    assertThat(Configuration.load(Path.of("config/demo.toml")).source().speed()).isEqualTo(60);
  }

  @Test
  void whatIsLeftOutHasTheDefaultsOfTheCore() {
    Configuration bare = Configuration.ofText("bare.toml", "[[probe]]\nsource = \"model\"\n");

    assertThat(bare.watch().alarm()).isEqualTo(AlarmSettings.DEFAULT);
    assertThat(bare.watch().firing()).isEqualTo(FiringSettings.DEFAULT);
    assertThat(bare.watch().signal()).isEqualTo(SignalSettings.DEFAULT);
    assertThat(bare.interval()).isEqualTo(Duration.ofSeconds(1));
    assertThat(bare.burst()).isTrue();
  }

  @Test
  void passphraseMayLieInAFileOfItsOwn(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("passphrase"), "cone ten down\r\n");

    Configuration read =
        Configuration.ofText(
            "file.toml",
            "[[probe]]\nsource = \"model\"\n[server]\nlisten = \"0.0.0.0:8080\"\n"
                + "passphrase_file = \"%s\"\n".formatted(file));

    assertThat(read.server().passphrase()).contains("cone ten down");
  }

  @Test
  void passphraseFileThatDoesNotFitIsRefusedWithoutShowingIt(@TempDir Path folder)
      throws IOException {
    for (String bad : List.of("short1", "two longer\nlines of it\n", "töpferscheibe", "")) {
      Path file = Files.writeString(folder.resolve("passphrase"), bad);

      assertThatThrownBy(
              () ->
                  Configuration.ofText(
                      "file.toml",
                      "[[probe]]\nsource = \"model\"\n[server]\npassphrase_file = \"%s\"\n"
                          .formatted(file)))
          .hasMessageStartingWith("file.toml:4: server.passphrase_file = \"" + file + "\" ")
          .hasMessageContaining("allowed: 8 to 200 letters")
          .hasMessageNotContaining(bad.isEmpty() ? "\"\"" : bad.substring(0, 6));
    }
  }

  /** Uncommenting every documented default changes nothing: the sample tells the truth. */
  @Test
  void documentedDefaultsAreTheRealOnes() throws IOException {
    Configuration written = Configuration.load(SAMPLE);
    Configuration uncommented = Configuration.ofText("all.toml", uncommented());

    assertThat(uncommented.watch()).isEqualTo(written.watch());
    assertThat(uncommented.source()).isEqualTo(written.source());
    assertThat(uncommented.interval()).isEqualTo(written.interval());
    assertThat(uncommented.burst()).isEqualTo(written.burst());
    assertThat(uncommented.dataDirectory()).isEqualTo(written.dataDirectory());
  }

  @Test
  void missingFileSaysWhatToDo() {
    assertThatThrownBy(() -> Configuration.load(Path.of("no-such.toml")))
        .hasMessage(
            "no-such.toml: no such file; copy config/climbwatch.toml there, or name another");
  }

  @Test
  void folderIsSaidToBeOne(@TempDir Path folder) {
    assertThatThrownBy(() -> Configuration.load(folder))
        .hasMessage(folder + ": a folder; name the file in it");
  }

  @Test
  void fileInAnotherEncodingIsSaidToBeOne(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("latin.toml");
    Files.write(file, "[kiln]\nname = \"Töpfer\"\n".getBytes(StandardCharsets.ISO_8859_1));

    assertThatThrownBy(() -> Configuration.load(file))
        .hasMessage(file + ": not a UTF-8 text; save it as UTF-8");
  }

  @Test
  void fileOfAnEditorThatMarksUtf8AndEndsLinesWithTwoCharactersLoads() {
    Configuration marked =
        Configuration.ofText(
            "m.toml", "\ufeff[kiln]\r\nname = \"Töpfer\"\r\n[[probe]]\r\nsource = \"model\"\r\n");

    assertThat(marked.watch().kiln()).isEqualTo("Töpfer");
  }

  /**
   * Data sheet 19-5793 of the MAX31855: 4 °C of 41.276 µV for Type K, cold junction within 2 °C.
   */
  @Test
  void errorsOfTheAmplifierDependOnItsChip() {
    var spi = Configuration.ofText("spi.toml", "[[probe]]\nsource = \"spi\"\n").watch().probe();

    assertThat(spi.chain().errors().amplifierC()).isZero();
    assertThat(spi.chain().errors().offsetUv()).isEqualTo(4 * 41.276);
    assertThat(spi.chain().errors().coldJunctionC()).isEqualTo(2);
  }

  /** The limits of error of each chip's data sheet; the file's own word goes before them. */
  @ParameterizedTest
  @CsvSource({
    "max31855, 0, 165.1, 0, 2, 0, 10.319",
    "max31856, 0.13, 128.89, 0, 0.7, 0.0078125, 0",
    "max6675, 0, 174.25, 0, 3.7, 0, 10.25",
    "ads1118, 0, 23.44, 2500, 1, 0, 7.8125"
  })
  void errorsOfEachChipAreThoseThatTheSampleFileNames(
      String chip,
      double amplifierC,
      double offsetUv,
      double gainPpm,
      double coldC,
      double stepC,
      double stepUv)
      throws IOException {
    String table = "[probe.spi]\nchip = \"" + chip + "\"\n";
    var own = Configuration.ofText("c.toml", "[[probe]]\nsource = \"spi\"\n" + table);
    var written =
        Configuration.ofText(
            "c.toml", "[[probe]]\nsource = \"spi\"\namplifier_error_c = 1\n" + table);

    ProbeErrors errors = own.watch().probe().chain().errors();
    List<Double> stated = List.of(amplifierC, offsetUv, gainPpm, coldC, stepC, stepUv);
    assertThat(
            List.of(
                errors.amplifierC(),
                Math.rint(errors.offsetUv() * 100) / 100,
                errors.gainPpm(),
                errors.coldJunctionC(),
                errors.stepC(),
                errors.stepUv()))
        .isEqualTo(stated);
    ProbeErrors whole = written.watch().probe().chain().errors();
    assertThat(whole.amplifierC()).isEqualTo(1);
    assertThat(whole.offsetUv() + whole.gainPpm()).as("the whole amplifier's is written").isZero();
    DecimalFormat plain = new DecimalFormat("0.#######", POINT);
    assertThat(Files.readString(SAMPLE).replaceAll(" +", " "))
        .contains(
            "# "
                + chip
                + " "
                + stated.stream().map(plain::format).collect(Collectors.joining(" ")));
  }

  @Test
  void passphraseIsNeverPartOfAText() {
    Configuration configuration =
        Configuration.ofText(
            "p.toml", "[[probe]]\nsource = \"model\"\n[server]\npassphrase = \"very secret\"\n");

    assertThat(configuration.toString()).doesNotContain("very secret");
  }

  private static String uncommented() throws IOException {
    List<String> lines = new ArrayList<>();
    boolean otherSource = false;
    for (String line : Files.readAllLines(SAMPLE)) {
      if (line.matches("(# )?\\[.*")) {
        otherSource = line.matches("# \\[.*");
      }
      boolean offered = line.startsWith("# passphrase") || line.contains("may be left out");
      boolean setting = line.matches("# [a-z_]+ = .*") && !otherSource && !offered;
      lines.add(setting ? line.substring(2) : line);
    }
    return String.join("\n", lines);
  }
}
