package org.climbwatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every library in the jar is named with its licence and its source. */
class ThirdPartyTest {
  private static final Path NOTICE = Path.of("THIRD-PARTY.md");

  /** Written by the build: group:artifact:jar:version:scope. */
  private static final Path BUNDLED = Path.of("target/bundled-libraries.txt");

  private static final Pattern LIBRARY =
      Pattern.compile("(?m)^\\s*([\\w.-]+):([\\w.-]+):jar:([\\w.-]+):(?:compile|runtime)");

  private static final Pattern ROW =
      Pattern.compile(
          "(?m)^\\| ([\\w.-]+) \\| ([\\w.-]+) \\| (\\d[\\w.-]*) \\| ([^|]+) \\| (https?://\\S+) \\|$");

  @Test
  void theNoticeListsExactlyTheLibrariesOfTheJar() throws IOException {
    List<String> bundled = found(LIBRARY, BUNDLED);

    assertThat(bundled).hasSizeGreaterThan(40);
    assertThat(found(ROW, NOTICE)).containsExactlyInAnyOrderElementsOf(bundled);
  }

  @Test
  void theJarCarriesTheNoticeAndTheTextOfEveryLicence() throws IOException {
    for (String name : List.of("THIRD-PARTY.md", "LICENSE", "licenses/EPL-2.0.md")) {
      try (var stream = ThirdPartyTest.class.getResourceAsStream("/META-INF/climbwatch/" + name)) {
        assertThat(stream).as(name).isNotNull().hasBinaryContent(Files.readAllBytes(Path.of(name)));
      }
    }
    String notice = Files.readString(NOTICE);
    assertThat(ROW.matcher(notice).results().map(row -> row.group(4)))
        .allMatch(
            licence -> licence.matches(".*\\b(Apache-2\\.0|EPL-2\\.0|MIT|BSD-3-Clause)\\b.*"));
    assertThat(notice).contains("## MIT", "## BSD", "## Apache License 2.0");
  }

  private static List<String> found(Pattern pattern, Path file) throws IOException {
    return pattern
        .matcher(Files.readString(file))
        .results()
        .map(ThirdPartyTest::coordinates)
        .toList();
  }

  private static String coordinates(MatchResult found) {
    return found.group(1) + ":" + found.group(2) + ":" + found.group(3);
  }
}
