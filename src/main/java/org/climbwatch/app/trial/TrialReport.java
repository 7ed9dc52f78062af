package org.climbwatch.app.trial;

import java.io.PrintWriter;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Writes trials as a table for people, or as CSV. */
public final class TrialReport {
  /** One firing's trial. */
  public record Tried(String firing, String name, List<Difference> differences) {}

  private TrialReport() {}

  /** A table, and a last line that counts. */
  public static void table(List<Tried> all, PrintWriter out) {
    out.printf(
        "%-6s  %-20s  %-24s  %9s  %9s  %s%n",
        "firing", "name", "alarm", "was at", "would be", "change");
    Map<Difference.Verdict, Integer> counts = new EnumMap<>(Difference.Verdict.class);
    for (Tried tried : all) {
      for (Difference difference : tried.differences()) {
        counts.merge(difference.verdict(), 1, Integer::sum);
        out.printf(
            "%-6s  %-20s  %-24s  %9s  %9s  %s%n",
            tried.firing(),
            cut(tried.name(), 20),
            cut(difference.alarm(), 24),
            time(difference.was()),
            time(difference.would()),
            change(difference));
      }
    }
    StringBuilder sums = new StringBuilder();
    for (Difference.Verdict verdict : Difference.Verdict.values()) {
      sums.append(sums.isEmpty() ? "" : ", ")
          .append(counts.getOrDefault(verdict, 0))
          .append(' ')
          .append(verdict.word());
    }
    out.println(all.size() + (all.size() == 1 ? " firing: " : " firings: ") + sums + ".");
  }

  /** One row for each alarm: RFC 4180, times in seconds. */
  public static void csv(List<Tried> all, PrintWriter out) {
    out.print("firing,name,alarm,was_s,would_s,change,message\r\n");
    for (Tried tried : all) {
      for (Difference difference : tried.differences()) {
        Fired shown = difference.would().or(difference::was).orElseThrow();
        out.print(
            String.join(
                    ",",
                    cell(tried.firing()),
                    cell(tried.name()),
                    cell(difference.alarm()),
                    seconds(difference.was()),
                    seconds(difference.would()),
                    difference.verdict().word(),
                    cell(shown.message()))
                + "\r\n");
      }
    }
  }

  private static String change(Difference difference) {
    long seconds = Math.abs(difference.shiftMs()) / 1000;
    String by = seconds < 120 ? seconds + " s" : String.format(Locale.ROOT, "%d min", seconds / 60);
    return switch (difference.verdict()) {
      case SAME, NEW, GONE -> difference.verdict().word();
      case EARLIER, LATER -> by + " " + difference.verdict().word();
    };
  }

  private static String time(Optional<Fired> fired) {
    return fired
        .map(
            each ->
                String.format(
                    Locale.ROOT,
                    "%d:%02d:%02d",
                    each.elapsedMs() / 3_600_000,
                    each.elapsedMs() / 60_000 % 60,
                    each.elapsedMs() / 1000 % 60))
        .orElse("-");
  }

  private static String seconds(Optional<Fired> fired) {
    return fired
        .map(each -> String.format(Locale.ROOT, "%.3f", each.elapsedMs() / 1000.0))
        .orElse("");
  }

  private static String cut(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1) + "~";
  }

  private static String cell(String text) {
    String harmless = text.matches("(?s)[=+\\-@\t\r'].*") ? "'" + text : text;
    return harmless.matches("(?s).*[,\"\r\n].*")
        ? "\"" + harmless.replace("\"", "\"\"") + "\""
        : harmless;
  }
}
