package org.climbwatch.app.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.climbwatch.app.config.SampleFile.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The sample file against the program: what the program says of itself when it refuses. */
class SampleFileTest {
  private static final List<String> SOURCES =
      List.of("serial", "spi", "modbus", "scpi", "model", "recording");
  private static final Pattern KNOWN =
      Pattern.compile("(?:([a-z_.]+)\\.)?zzz is an unknown key;.* known here: (.*)");

  /** What the source cannot do without. */
  private static final Map<String, List<String>> NEEDED =
      Map.of(
          "serial", List.of("port = \"/dev/ttyUSB0\""),
          "modbus", List.of("port = \"/dev/ttyUSB0\"", "address = 0"),
          "scpi", List.of("port = \"/dev/ttyUSB0\"", "query = \"READ?\""),
          "recording", List.of("file = \"firing.csv\""));

  /** What the file says of a setting that it only shows an example of. */
  private static final String EXAMPLE = "no default";

  @Test
  void everyKeyThatTheProgramKnowsIsDocumentedAndNoOther() throws IOException {
    Map<String, Set<String>> documented = new TreeMap<>();
    for (String table : SampleFile.tables()) {
      documented.computeIfAbsent(parent(table), any -> new TreeSet<>()).add(name(table));
    }
    for (Setting setting : SampleFile.settings()) {
      documented.computeIfAbsent(setting.table(), any -> new TreeSet<>()).add(setting.key());
    }
    Map<String, Set<String>> known = new TreeMap<>();
    for (String source : SOURCES) {
      known.putAll(knownKeys(source));
    }

    assertThat(documented).isEqualTo(known);
  }

  @ParameterizedTest
  @ValueSource(strings = {"serial", "spi", "modbus", "scpi", "model", "recording"})
  void documentedDefaultsOfEachSourceAreTheRealOnes(String source) throws IOException {
    assertDocumentedDefaults(source, "");
  }

  /** A key of one chip alone says so: its remark begins with the chip's word. */
  @ParameterizedTest
  @ValueSource(strings = {"max31856", "max6675", "ads1118"})
  void documentedDefaultsOfEachChipAreTheRealOnes(String chip) throws IOException {
    assertDocumentedDefaults("spi", chip);
  }

  private static void assertDocumentedDefaults(String source, String chip) throws IOException {
    StringBuilder written = new StringBuilder();
    for (Setting setting : SampleFile.settings()) {
      boolean needed =
          NEEDED.getOrDefault(source, List.of()).stream()
              .anyMatch(line -> line.startsWith(setting.key() + " "));
      boolean own = chipOf(setting).isEmpty() ? chip.isEmpty() : chipOf(setting).equals(chip);
      boolean example = setting.remark().contains(EXAMPLE);
      if (setting.table().equals("probe." + source) && !needed && own && !example) {
        written.append(setting.key()).append(" = ").append(setting.value()).append('\n');
      }
    }

    assertThat(written).isNotEmpty();
    String bare = probe(source, "") + chipLine(chip);
    assertThat(Configuration.ofText("written.toml", bare + written).source())
        .isEqualTo(Configuration.ofText("bare.toml", bare).source());
  }

  private static String chipOf(Setting setting) {
    Matcher chip = Pattern.compile("(max\\d+|ads\\d+): .*").matcher(setting.remark());
    return chip.matches() ? chip.group(1) : "";
  }

  private static String chipLine(String chip) {
    return chip.isEmpty() ? "" : "chip = \"" + chip + "\"\n";
  }

  static List<Setting> limited() throws IOException {
    return SampleFile.settings().stream().filter(each -> !refusal(each).isEmpty()).toList();
  }

  /** The limits are taken from the program's own refusal of an absurd value. */
  @ParameterizedTest
  @MethodSource("limited")
  void documentedLimitsAreTheRealOnes(Setting setting) throws IOException {
    String allowed = refusal(setting);
    if (setting.key().endsWith("delay_s")) {
      assertThat(Files.readString(SampleFile.PATH)).contains("Delays are " + allowed);
    } else if (setting.key().equals("seed")) {
      assertThat(allowed).startsWith("0 to ");
    } else if (allowed.contains(" to ")) {
      assertThat(setting.remark()).contains(allowed);
    } else {
      String documented = setting.isText() ? setting.value() + setting.remark() : setting.remark();
      assertThat(documented.split("[^A-Za-z0-9_]+")).contains(allowed.split("\\W+"));
    }
  }

  @Test
  void limitsAreLookedAtForAllKeysThatHaveSome() throws IOException {
    assertThat(limited()).hasSizeGreaterThan(40);
  }

  private static String refusal(Setting setting) {
    String line = setting.key() + " = " + (setting.isText() ? "\"zzz\"" : "-1e18") + "\n";
    String text;
    if (setting.table().startsWith("probe.")) {
      text = probe(name(setting.table()), chipLine(chipOf(setting)) + line);
    } else if (setting.table().equals("probe")) {
      text = setting.key().equals("source") ? "[[probe]]\n" + line : probe("model", "", line);
    } else {
      text = probe("model", "") + "[" + setting.table() + "]\n" + line;
    }
    ConfigurationProblem problem =
        catchThrowableOfType(
            ConfigurationProblem.class, () -> Configuration.ofText("absurd.toml", text));
    Matcher allowed = Pattern.compile("allowed: \"?(.*?)\"?$").matcher("");
    if (problem != null) {
      allowed.reset(problem.getMessage().lines().findFirst().orElse(""));
    }
    boolean passphrase = setting.key().equals("passphrase");
    return allowed.find() && !passphrase ? allowed.group(1) : "";
  }

  private static Map<String, Set<String>> knownKeys(String source) throws IOException {
    StringBuilder text =
        new StringBuilder("zzz = 1\n").append(probe(source, "zzz = 1\n", "zzz = 1\n"));
    SampleFile.tables().stream()
        .filter(table -> !table.startsWith("probe"))
        .forEach(table -> text.append('[').append(table).append("]\nzzz = 1\n"));
    ConfigurationProblem problem =
        catchThrowableOfType(
            ConfigurationProblem.class,
            () -> Configuration.ofText("unknown.toml", text.toString()));
    Map<String, Set<String>> known = new TreeMap<>();
    problem
        .getMessage()
        .lines()
        .map(KNOWN::matcher)
        .filter(Matcher::find)
        .forEach(
            found ->
                known.put(
                    found.group(1) == null ? "" : found.group(1),
                    List.of(found.group(2).split(", ")).stream()
                        .collect(Collectors.toCollection(TreeSet::new))));
    return known;
  }

  private static String probe(String source, String sourceLines) {
    return probe(source, sourceLines, "");
  }

  private static String probe(String source, String sourceLines, String probeLines) {
    String kept =
        NEEDED.getOrDefault(source, List.of()).stream()
            .filter(line -> !sourceLines.startsWith(line.replaceAll(" .*", " ")))
            .map(line -> line + "\n")
            .collect(Collectors.joining());
    return "[[probe]]\nsource = \"%s\"\n%s[probe.%s]\n%s%s"
        .formatted(source, probeLines, source, kept, sourceLines);
  }

  private static String parent(String table) {
    return table.contains(".") ? table.substring(0, table.lastIndexOf('.')) : "";
  }

  private static String name(String table) {
    return table.substring(table.lastIndexOf('.') + 1);
  }
}
