package org.climbwatch.web;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** Writes metrics as OpenMetrics 1.0 text. */
final class OpenMetrics {
  static final String TYPE = "application/openmetrics-text; version=1.0.0; charset=utf-8";

  private final StringBuilder text = new StringBuilder(2048);

  private OpenMetrics() {}

  static byte[] bytes(List<Metric> metrics) {
    OpenMetrics page = new OpenMetrics();
    metrics.forEach(page::family);
    page.text.append("# EOF\n");
    return page.text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void family(Metric metric) {
    boolean counter = metric.kind() == Metric.Kind.COUNTER;
    describe("TYPE", metric.name(), counter ? "counter" : "gauge");
    if (!metric.unit().isEmpty()) {
      describe("UNIT", metric.name(), metric.unit());
    }
    describe("HELP", metric.name(), escaped(metric.help()));
    for (Metric.Sample sample : metric.samples()) {
      text.append(metric.name()).append(counter ? "_total" : "");
      labels(sample.labels());
      text.append(' ').append(number(sample.value())).append('\n');
    }
  }

  private void describe(String what, String name, String value) {
    text.append("# ").append(what).append(' ').append(name).append(' ').append(value).append('\n');
  }

  private void labels(Map<String, String> labels) {
    String before = "{";
    for (Map.Entry<String, String> label : labels.entrySet()) {
      text.append(before).append(label.getKey()).append("=\"");
      text.append(escaped(label.getValue())).append('"');
      before = ",";
    }
    text.append(labels.isEmpty() ? "" : "}");
  }

  private static String escaped(String value) {
    return value.replace("\\", "\\\\").replace("\"", "\\\"").replace("\n", "\\n");
  }

  private static String number(double value) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "+Inf" : "-Inf";
    }
    boolean whole = value == Math.rint(value) && Math.abs(value) < 1e15;
    return whole ? Long.toString((long) value) : Double.toString(value);
  }
}
