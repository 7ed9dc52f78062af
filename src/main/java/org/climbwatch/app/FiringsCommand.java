package org.climbwatch.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Duration;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.climbwatch.journal.FiringSummary;
import org.climbwatch.journal.Firings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists the recorded firings. */
@Command(
    name = "firings",
    description = "Lists the recorded firings, the newest first.",
    footerHeading = "%nExample%n",
    footer = "  climbwatch firings --data /var/lib/climbwatch")
final class FiringsCommand implements Callable<Integer> {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  @Spec private CommandSpec spec;
  @Mixin private DataOption data = new DataOption();

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    try (Firings firings = Firings.open(data.journal())) {
      List<FiringSummary> all = firings.list();
      if (all.isEmpty()) {
        out.println("No firing is recorded yet.");
      } else {
        out.printf(
            "%6s  %-16s  %9s  %7s  %8s  %6s  %s%n",
            "firing", "began", "length", "peak C", "readings", "alarms", "name");
        all.forEach(firing -> print(firing, out));
      }
    }
    out.flush();
    return Main.WELL;
  }

  private static void print(FiringSummary firing, PrintWriter out) {
    Duration length = firing.duration();
    out.printf(
        Locale.ROOT,
        "%6d  %-16s  %9s  %7s  %8d  %6d  %s%n",
        firing.id(),
        WHEN.format(firing.began().atZone(ZoneId.systemDefault())),
        String.format(Locale.ROOT, "%d h %02d m", length.toHours(), length.toMinutesPart()),
        firing.peakC().isPresent()
            ? String.format(Locale.ROOT, "%.0f", firing.peakC().getAsDouble())
            : "-",
        firing.readings(),
        firing.alarms(),
        firing.name() + (firing.ended().isEmpty() ? " (still on)" : ""));
  }
}
