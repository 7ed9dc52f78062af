package org.climbwatch.app.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.signal.SignalSettings;
import org.junit.jupiter.api.Test;

class ConfigurationTest {
  private static final Path SAMPLE = Path.of("config/climbwatch.toml");

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
  }

  /** Uncommenting every documented default changes nothing: the sample tells the truth. */
  @Test
  void documentedDefaultsAreTheRealOnes() throws IOException {
    Configuration written = Configuration.load(SAMPLE);
    Configuration uncommented = Configuration.ofText("all.toml", uncommented());

    assertThat(uncommented.watch()).isEqualTo(written.watch());
    assertThat(uncommented.source()).isEqualTo(written.source());
    assertThat(uncommented.interval()).isEqualTo(written.interval());
    assertThat(uncommented.dataDirectory()).isEqualTo(written.dataDirectory());
  }

  /** Every setting of the record of settings in force has its line in the sample. */
  @Test
  void everySettingIsInTheSample() throws IOException {
    String sample = Files.readString(SAMPLE);
    for (String line : SettingsText.encode(Configuration.load(SAMPLE).watch()).split("\n")) {
      String key = line.substring(0, line.indexOf('=')).replaceAll(".*\\.", "");
      String written = key.equals("kiln") ? "name" : key.replace("delay_ms", "delay_s");
      assertThat(sample).as(key).containsPattern("(?m)^(# )?" + written + " = ");
    }
  }

  @Test
  void missingFileSaysWhatToDo() {
    assertThatThrownBy(() -> Configuration.load(Path.of("no-such.toml")))
        .hasMessage(
            "no-such.toml: no such file; copy config/climbwatch.toml there, or name another");
  }

  @Test
  void settingsInForceSurviveTheirText() {
    for (Path file : List.of(SAMPLE, Path.of("config/demo.toml"))) {
      var settings = Configuration.load(file).watch();
      assertThat(SettingsText.decode(SettingsText.encode(settings))).isEqualTo(settings);
    }
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
      boolean offered = line.startsWith("# passphrase");
      boolean setting = line.matches("# [a-z_]+ = .*") && !otherSource && !offered;
      lines.add(setting ? line.substring(2) : line);
    }
    return String.join("\n", lines);
  }
}
