package org.climbwatch.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.climbwatch.source.recorded.Recording;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Runs a recording through the same core as the daemon. */
@Command(
    name = "replay",
    description = {
      "Runs a recording through the same core as run and prints what it would have announced,"
          + " as CSV: elapsed_s,event,subject,state,message.",
      "The recording needs the columns elapsed_s and temperature_c, or elapsed_s, emf_mv and"
          + " cold_junction_c; an exported firing has them."
    },
    footerHeading = "%nExample%n",
    footer = "  climbwatch replay firing.csv --config climbwatch.toml")
final class ReplayCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ConfigOption config = new ConfigOption();

  @Parameters(paramLabel = "FILE", description = "The recording (CSV).")
  private Path file;

  @Override
  public Integer call() throws IOException {
    WatchSettings settings = config.load().watch();
    PrintWriter out = spec.commandLine().getOut();
    try (Recording recording = new Recording(file, settings.probeNames());
        Progress progress = new Progress("replayed", "readings")) {
      out.print("elapsed_s,event,subject,state,message\r\n");
      Watch watch = new Watch(settings);
      for (Optional<Input> input = recording.next(); input.isPresent(); input = recording.next()) {
        for (Event event : watch.accept(input.get()).events()) {
          print(event, out);
        }
        progress.one();
      }
    } finally {
      out.flush();
    }
    return Main.WELL;
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
