package org.climbwatch.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.http.HttpResponse;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The metrics page read by the rules of OpenMetrics 1.0: the ABNF of its text format, and the prose
 * on units, counters, metadata before samples, families in one piece, and the last line.
 */
class OpenMetricsTest {
  private static final Pattern METADATA =
      Pattern.compile("# (TYPE|UNIT|HELP) ([a-zA-Z_:][a-zA-Z0-9_:]*) (.*)");
  private static final String ESCAPED = "(?:[^\"\\\\\\n]|\\\\[\\\\\"n])*";
  private static final Pattern SAMPLE =
      Pattern.compile(
          "([a-zA-Z_:][a-zA-Z0-9_:]*)"
              + "(\\{[a-zA-Z_][a-zA-Z0-9_]*=\""
              + ESCAPED
              + "\""
              + "(?:,[a-zA-Z_][a-zA-Z0-9_]*=\""
              + ESCAPED
              + "\")*})?"
              + " ([-+]?(?:\\d+(?:\\.\\d*)?(?:[eE][-+]?\\d+)?|Inf)|NaN)");

  @Test
  void pageIsValidWhileCold() throws Exception {
    try (Served served = new Served()) {
      check(served.get("/metrics"));
    }
  }

  @Test
  void pageIsValidInMidFiringAndTellsTheNumbers() throws Exception {
    try (Served served = new Served()) {
      served.backend.begin("Tea bowls");
      served.backend.measure(843.25, -118.4);

      String page = check(served.get("/metrics"));

      assertThat(page)
          .contains("climbwatch_temperature_celsius{probe=\"top\"} 843.25\n")
          .contains("climbwatch_climb_celsius_per_hour{probe=\"top\"} -118.4\n")
          .contains("climbwatch_phase{phase=\"drying\"} 1\n")
          .contains("climbwatch_readings_total 7301\n")
          .contains("{file=\"a\\\"b\\\\c\\nd\"} 12.5\n");
    }
  }

  private static String check(HttpResponse<String> response) {
    assertThat(response.headers().firstValue("Content-Type").orElseThrow().replace(" ", ""))
        .isEqualToIgnoringCase("application/openmetrics-text;version=1.0.0;charset=utf-8");
    String page = response.body();
    assertThat(page).endsWith("# EOF\n");
    Set<String> families = new HashSet<>();
    Set<String> samples = new HashSet<>();
    String family = "";
    String type = "";
    for (String line : page.substring(0, page.length() - 6).split("\n")) {
      Matcher metadata = METADATA.matcher(line);
      if (metadata.matches() && metadata.group(1).equals("TYPE")) {
        family = metadata.group(2);
        type = metadata.group(3);
        assertThat(type).isIn("gauge", "counter");
        assertThat(families.add(family)).as("%s in one piece", family).isTrue();
      } else if (metadata.matches()) {
        assertThat(metadata.group(2)).isEqualTo(family);
        if (metadata.group(1).equals("UNIT")) {
          assertThat(family).endsWith("_" + metadata.group(3));
        }
      } else {
        Matcher sample = SAMPLE.matcher(line);
        assertThat(sample.matches()).as(line).isTrue();
        assertThat(sample.group(1)).isEqualTo(family + (type.equals("counter") ? "_total" : ""));
        assertThat(samples.add(sample.group(1) + sample.group(2))).as(line).isTrue();
      }
    }
    assertThat(families).isNotEmpty();
    return page;
  }

  @Test
  void familyThatTheFormatForbidsCannotBeMade() {
    Metric.Sample one = new Metric.Sample(Map.of(), 1);
    assertThatThrownBy(() -> new Metric("Bad-name", Metric.Kind.GAUGE, "", "Help.", List.of(one)))
        .hasMessageContaining("lower_case");
    assertThatThrownBy(
            () -> new Metric("heat", Metric.Kind.GAUGE, "celsius", "Help.", List.of(one)))
        .hasMessageContaining("must end in");
    assertThatThrownBy(() -> Metric.counter("readings_total", "", "Help.", 1))
        .hasMessageContaining("_total");
  }
}
