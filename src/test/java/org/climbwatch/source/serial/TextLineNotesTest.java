package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the notes promise to whoever writes a sketch is what the program does. */
class TextLineNotesTest {
  private static final Pattern LINE = Pattern.compile("[a-z_]+=[^`|\\n*]* \\*\\d+:[0-9A-F]{2}");
  private static final Pattern ROW = Pattern.compile("(?m)^\\| `([a-z_]+)` \\| ");

  @Test
  void everyExampleLineOfTheNotesIsTaken() throws IOException {
    List<String> lines = LINE.matcher(notes()).results().map(MatchResult::group).toList();

    assertThat(lines).hasSizeGreaterThanOrEqualTo(5);
    assertThat(lines)
        .allSatisfy(
            line ->
                assertThat(TextLine.decode(line.getBytes(StandardCharsets.US_ASCII)))
                    .isInstanceOf(TextLine.Accepted.class));
  }

  @Test
  void everyReasonForDecliningStandsInTheNotes() throws IOException {
    String section = notes().split("## What becomes of a line")[1];

    List<String> words = ROW.matcher(section).results().map(row -> row.group(1)).toList();

    assertThat(words)
        .containsExactlyInAnyOrderElementsOf(
            Arrays.stream(Decline.values()).map(Decline::word).toList());
  }

  @Test
  void theLengthAllowedIsTheOneInTheNotes() throws IOException {
    assertThat(notes()).contains("at most " + TextLine.LONGEST + " bytes without its end");
  }

  private static String notes() throws IOException {
    return Files.readString(Path.of("hardware-notes/text-line.md"));
  }
}
