package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/**
 * Raw signal in, events out, by the command that users have: one folder for each recording. {@code
 * -Dclimbwatch.bless=true} writes the events anew; look at every changed line then.
 */
class RecordingsTest {
  private static final Path FOLDERS = Path.of("src/test/resources/recordings");

  @TempDir Path folder;

  static List<Path> recordings() throws IOException {
    try (Stream<Path> folders = Files.list(FOLDERS)) {
      return folders.filter(Files::isDirectory).sorted().toList();
    }
  }

  static List<Path> healthy() throws IOException {
    return recordings().stream()
        .filter(each -> each.getFileName().toString().startsWith("healthy"))
        .toList();
  }

  @Test
  void everyRecordingSaysWhatHappenedInIt() throws IOException {
    assertThat(recordings())
        .hasSizeGreaterThanOrEqualTo(17)
        .allSatisfy(each -> assertThat(each.resolve("README.md")).isNotEmptyFile());
    assertThat(healthy()).hasSizeGreaterThanOrEqualTo(5);
  }

  @ParameterizedTest
  @MethodSource("recordings")
  void recordingGivesTheEventsThatWereBlessed(Path recording) throws IOException {
    String events = replayed(recording);

    Path expected = recording.resolve("expected-events.csv");
    if (Boolean.getBoolean("climbwatch.bless")) {
      Files.writeString(expected, events.replace("\r\n", "\n"));
    }
    assertThat(events.replace("\r\n", "\n")).isEqualTo(Files.readString(expected));
  }

  /** What a healthy firing may announce: where it stands, and that it is over. */
  @ParameterizedTest
  @MethodSource("healthy")
  void healthyRecordingRaisesNothingButThatTheKilnMayBeOpened(Path recording) throws IOException {
    assertThat(replayed(recording).lines().filter(line -> line.contains(",alarm,")))
        .allSatisfy(line -> assertThat(line).contains(",alarm,safe_to_open,"));
  }

  private String replayed(Path recording) throws IOException {
    Path csv = folder.resolve("recording.csv");
    Path packed = recording.resolve("recording.csv.gz");
    if (Files.exists(packed)) {
      try (InputStream in = new GZIPInputStream(Files.newInputStream(packed))) {
        Files.copy(in, csv);
      }
    } else {
      Files.copy(recording.resolve("recording.csv"), csv);
    }
    Path own = recording.resolve("climbwatch.toml");
    Path config = Files.exists(own) ? own : FOLDERS.resolve("kiln.toml");
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine command =
        Main.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int exit = command.execute("replay", csv.toString(), "--config", config.toString());
    assertThat(exit).as(err.toString()).isZero();
    return out.toString();
  }
}
