package org.climbwatch.app.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One folder for each kind of mistake: the file and the message that a person gets. {@code
 * -Dclimbwatch.bless=true} writes the messages anew; look at every changed line then.
 */
class ConfigurationMistakesTest {
  private static final Path FOLDERS = Path.of("src/test/resources/config-mistakes");

  static List<Path> mistakes() throws IOException {
    try (Stream<Path> folders = Files.list(FOLDERS)) {
      return folders.sorted().toList();
    }
  }

  @Test
  void thereIsAFolderForEachKindOfMistake() throws IOException {
    assertThat(mistakes().size()).isGreaterThanOrEqualTo(50);
  }

  @ParameterizedTest
  @MethodSource("mistakes")
  void messageSaysFileLineKeyAndWhatIsAllowed(Path folder) throws IOException {
    String text = Files.readString(folder.resolve("climbwatch.toml"));

    ConfigurationProblem problem =
        catchThrowableOfType(
            ConfigurationProblem.class, () -> Configuration.ofText("climbwatch.toml", text));

    assertThat(problem).as("refused").isNotNull();
    Path expected = folder.resolve("expected.txt");
    if (Boolean.getBoolean("climbwatch.bless")) {
      Files.writeString(expected, problem.getMessage() + "\n");
    }
    assertThat(problem.getMessage() + "\n").isEqualTo(Files.readString(expected));
  }

  /** Among them slips in its line that the parser's own message would have quoted. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "passphrase = hushword",
        "passphrase = 12hushword",
        "passphrase = true hushword",
        "passphrase = 'abc' hushword",
        "passphrase = \"hushword",
        "passphrase = 0xhushword",
        "passphrase = '''hushword",
        "passphrase \"hushword\"",
        "passphrase: hushword",
        "passphrase = \"hush\"",
        "passphrase = \"hushwörd\"",
        "passphrase = [\"hushword\"]",
        "passphras = \"hushword\""
      })
  void passphraseIsNeverQuoted(String line) {
    String text = "[[probe]]\nsource = \"model\"\n[server]\n" + line + "\n";

    ConfigurationProblem problem =
        catchThrowableOfType(ConfigurationProblem.class, () -> Configuration.ofText("c", text));

    assertThat(problem).as("refused").isNotNull();
    assertThat(problem.getMessage()).doesNotContain("hush");
  }
}
