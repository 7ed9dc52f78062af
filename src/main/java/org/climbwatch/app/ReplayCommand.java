package org.climbwatch.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.climbwatch.app.trial.TrialReport;
import org.climbwatch.source.recorded.Recording;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Runs a recording through the same core as the daemon. */
@Command(
    name = "replay",
    description = {
      "Runs a recording through the same core as run and prints what it would have announced,"
          + " as CSV: elapsed_s,event,subject,state,message.",
      "The recording needs the columns elapsed_s and temperature_c, or elapsed_s, emf_mv and"
          + " cold_junction_c; an exported firing has them.",
      "With --firings, or several recordings, it tries settings on the past instead: which alarms"
          + " the settings would raise, and how that differs from what was raised then."
    },
    footerHeading = "%nExamples%n",
    footer = {
      "  climbwatch replay firing.csv --config climbwatch.toml",
      "  climbwatch replay --firings all --data /var/lib/climbwatch --config trial.toml",
      "  climbwatch replay a.csv b.csv --config trial.toml --against climbwatch.toml"
    })
final class ReplayCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data = new DataOption();

  @Parameters(paramLabel = "FILE", arity = "0..*", description = "Recordings (CSV).")
  private List<Path> files = List.of();

  @Option(
      names = "--firings",
      paramLabel = "all|N,N",
      hideParamSyntax = true,
      split = ",",
      description = "Firings of the journal to try the settings on, by number, or all.")
  private List<String> firings = List.of();

  @Option(
      names = "--against",
      paramLabel = "FILE",
      description = "Settings to compare recordings with (default: the built-in ones).")
  private Optional<Path> against = Optional.empty();

  @Option(
      names = "--format",
      paramLabel = "events|table|csv",
      description =
          "events of one recording, or what differs as a table or CSV (default: events for one"
              + " recording, else table).")
  private Optional<String> format = Optional.empty();

  @Override
  public Integer call() throws IOException {
    boolean one = files.size() == 1 && firings.isEmpty();
    String as = format.orElse(one && against.isEmpty() ? "events" : "table");
    refuseNonsense(as, one);
    PrintWriter out = spec.commandLine().getOut();
    try {
      if (as.equals("events")) {
        events(out);
      } else {
        TrialRun run = new TrialRun(data.configuration());
        List<TrialReport.Tried> tried =
            firings.isEmpty()
                ? run.recordings(files, against)
                : run.firings(data.journal(), firings);
        if (as.equals("csv")) {
          TrialReport.csv(tried, out);
        } else {
          TrialReport.table(tried, out);
        }
      }
    } finally {
      out.flush();
    }
    return Main.WELL;
  }

  private void refuseNonsense(String as, boolean one) {
    if (!List.of("events", "table", "csv").contains(as)) {
      throw new Refusal("--format \"" + as + "\" is unknown; allowed: events, table, csv");
    }
    if (files.isEmpty() == firings.isEmpty()) {
      throw new Refusal("name recordings, or --firings of the journal, and not both");
    }
    if (as.equals("events") && !one) {
      throw new Refusal("--format events is for one recording; write table or csv");
    }
    if (against.isPresent() && !firings.isEmpty()) {
      throw new Refusal("--against is for recordings; a firing is compared with its own record");
    }
  }

  private void events(PrintWriter out) throws IOException {
    WatchSettings settings = data.configuration().watch();
    try (Recording recording = new Recording(files.get(0), settings.probeNames());
        Progress progress = new Progress("replayed", "readings")) {
      out.print("elapsed_s,event,subject,state,message\r\n");
      Watch watch = new Watch(settings);
      for (Optional<Input> input = recording.next(); input.isPresent(); input = recording.next()) {
        for (Event event : watch.accept(input.get()).events()) {
          print(event, out);
        }
        progress.one();
      }
    }
  }

  private static void print(Event event, PrintWriter out) {
    long millis =
        event instanceof Event.FiringBegan began ? began.since().millis() : event.at().millis();
    out.print(
        String.format(Locale.ROOT, "%.3f", millis / 1000.0).replaceAll("\\.?0+$", "")
            + ","
            + event.event()
            + ","
            + cell(event.subject())
            + ","
            + event.state()
            + ","
            + cell(event.message())
            + "\r\n");
  }

  private static String cell(String text) {
    return text.matches("(?s).*[,\"\r\n].*") ? "\"" + text.replace("\"", "\"\"") + "\"" : text;
  }
}
