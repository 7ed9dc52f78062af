package org.climbwatch.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Calibration;
import org.climbwatch.journal.Journal;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;
import org.climbwatch.source.spi.SpiLink;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Reads the configuration, listens to the probes for a few seconds and says how they are. */
@Command(
    name = "check",
    description = {
      "Reads the settings, takes readings from each probe for a few seconds and prints a table.",
      "Exit 0 when all is well, 1 when a probe is not."
    },
    footerHeading = "%nExamples%n",
    footer = {
      "  climbwatch check --config climbwatch.toml",
      "  climbwatch check --calibrate --config climbwatch.toml --seconds 30"
    })
final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private DataOption data = new DataOption();

  @Option(
      names = "--calibrate",
      description = {
        "Leads through a comparison of a probe with melting ice, boiling water or another"
            + " instrument, and records what must be added. The daemon must be stopped, since"
            + " journal and probe are needed; run it as the daemon's user."
      })
  private boolean calibrate;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      defaultValue = "5",
      description = "How long to listen, 1 to 600 (default 5).")
  private int seconds;

  private final SpiLink.Buses buses;

  CheckCommand() {
    this(SpiLink.Buses.ofLinux());
  }

  /** With other buses for amplifiers on SPI. */
  CheckCommand(SpiLink.Buses buses) {
    this.buses = buses;
  }

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (seconds < 1 || seconds > 600) {
      throw new Refusal("--seconds " + seconds + " is out of range; allowed: 1 to 600");
    }
    Configuration configuration = data.configuration();
    if (calibrate) {
      calibrate(configuration);
      return Main.WELL;
    }
    List<Source> sources = Sources.open(configuration, 0, buses);
    try {
      List<ProbeCheck> checks = listen(configuration, sources);
      return print(checks, sources) ? Main.WELL : Main.NOT_WELL;
    } finally {
      sources.forEach(Source::close);
    }
  }

  /** The journal is opened first: nobody shall boil water for a record that cannot be written. */
  private void calibrate(Configuration configuration) throws IOException, InterruptedException {
    Path file = DataOption.journalIn(configuration.dataDirectory());
    try (Journal journal = Journal.open(file, new TextCodec())) {
      Dialogue dialogue =
          new Dialogue(
              new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)),
              spec.commandLine().getOut());
      CalibrationGuide guide =
          new CalibrationGuide(
              dialogue,
              configuration.watch().probes(),
              journal.calibrations(),
              probe -> steady(configuration, probe, dialogue),
              Instant::now);
      Optional<Calibration> found = guide.lead();
      found.ifPresent(journal::calibrated);
      dialogue.say(
          found.isPresent()
              ? "Written to " + file + ". In force from the next start of the daemon."
              : "Nothing was written.");
    }
  }

  /** Opens the probe for these seconds only, so that what it read before does not come along. */
  private Optional<SteadyReading> steady(Configuration configuration, int probe, Dialogue dialogue)
      throws IOException, InterruptedException {
    List<Source> sources = Sources.open(configuration, 0, buses);
    try {
      dialogue.say("  Listens for " + seconds + " s ...");
      ProbeCheck check = listen(configuration, sources).get(probe);
      double[] readC = check.readC();
      if (readC.length >= SteadyReading.FEWEST && readC.length > check.faulty()) {
        return Optional.of(SteadyReading.of(readC));
      }
      dialogue.say(
          "  Too few good readings: "
              + readC.length
              + "; needed are "
              + SteadyReading.FEWEST
              + ", and more than faulty ones.");
      if (!check.well()) {
        dialogue.say("  " + check.verdict(seconds));
      }
      dialogue.say("  The device says: " + sources.get(probe).describe());
      dialogue.say("  Another program may have it open; or listen longer with --seconds.");
      return Optional.empty();
    } finally {
      sources.forEach(Source::close);
    }
  }

  private List<ProbeCheck> listen(Configuration configuration, List<Source> sources)
      throws InterruptedException {
    Watch watch = new Watch(configuration.watch());
    List<ProbeCheck> checks =
        configuration.watch().probeNames().stream().map(ProbeCheck::new).toList();
    long intervalMillis = configuration.interval().toMillis();
    for (long millis = 0; millis <= seconds * 1000L; millis += intervalMillis) {
      for (int i = 0; i < sources.size(); i++) {
        Optional<Reading> reading = sources.get(i).read(new Moment(0, millis));
        if (reading.isPresent()) {
          watch.accept(new Input.Measured(reading.get())).judged().ifPresent(checks.get(i)::take);
        }
      }
      Thread.sleep((long) (intervalMillis / configuration.speed()));
    }
    return checks;
  }

  private boolean print(List<ProbeCheck> checks, List<Source> sources) {
    PrintWriter out = spec.commandLine().getOut();
    out.println(ProbeCheck.HEADING);
    checks.forEach(check -> out.println(check.row()));
    boolean one = checks.size() == 1;
    for (int i = 0; i < checks.size(); i++) {
      String probe = one ? "" : checks.get(i).probe() + ": ";
      out.println(probe + sources.get(i).describe());
      out.println(probe + checks.get(i).verdict(seconds));
    }
    out.flush();
    return checks.stream().allMatch(ProbeCheck::well);
  }
}
