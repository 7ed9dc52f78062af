package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class SystemdUnitIT {
  private static final String UNIT = "systemd/climbwatch.service";

  /** The score written in DEVELOPERS.md. */
  private static final double MOST_EXPOSURE = 1.7;

  @Test
  void systemdFindsNothingToComplainOf() throws Exception {
    assertThat(output("systemd-analyze", "verify", UNIT)).doesNotContain("climbwatch.service:");
  }

  @Test
  void exposureIsAtMostTheDocumentedOne() throws Exception {
    String report = output("systemd-analyze", "security", "--offline=yes", UNIT);
    Matcher score = Pattern.compile("Overall exposure level[^:]*: ([0-9.]+)").matcher(report);

    assertThat(score.find()).as(report).isTrue();
    assertThat(Double.parseDouble(score.group(1))).isLessThanOrEqualTo(MOST_EXPOSURE);
  }

  private static String output(String... command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return output;
  }
}
