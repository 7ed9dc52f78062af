package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SystemdUnitIT {
  private static final String UNIT = "systemd/climbwatch.service";

  /** The score written in DEVELOPERS.md. */
  private static final double MOST_EXPOSURE = 1.7;

  @Test
  void systemdFindsNothingToComplainOf() throws Exception {
    assertThat(complaints(Path.of(UNIT))).isEmpty();
  }

  /** The check above is worth something only if it can fail. */
  @Test
  void systemdFindsAKeyThatItDoesNotKnow(@TempDir Path folder) throws Exception {
    Path broken = folder.resolve("climbwatch.service");
    Files.writeString(
        broken, Files.readString(Path.of(UNIT)).replace("WatchdogSec=", "WatchdogSeconds="));

    assertThat(complaints(broken)).anyMatch(line -> line.contains("WatchdogSeconds"));
  }

  @Test
  void exposureIsAtMostTheDocumentedOne() throws Exception {
    String report = output("systemd-analyze", "security", "--offline=yes", UNIT);
    Matcher score = Pattern.compile("Overall exposure level[^:]*: ([0-9.]+)").matcher(report);

    assertThat(score.find()).as(report).isTrue();
    assertThat(Double.parseDouble(score.group(1))).isLessThanOrEqualTo(MOST_EXPOSURE);
  }

  /** Lines about this unit: the machine's own units may have complaints too. */
  private static List<String> complaints(Path unit) throws Exception {
    return output("systemd-analyze", "verify", unit.toString())
        .lines()
        .filter(line -> line.contains("climbwatch"))
        .toList();
  }

  private static String output(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return output;
  }
}
