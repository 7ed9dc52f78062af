package org.climbwatch.app;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.config.ProbeSource;
import org.climbwatch.export.FiringCsv;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.source.simulated.FiringKind;
import org.climbwatch.source.simulated.SimulatedSource;
import org.climbwatch.source.simulated.SimulationSettings;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.Watch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes a firing of the kiln model as a recording. */
@Command(
    name = "simulate",
    description = {
      "Writes a firing of the kiln model as a CSV recording, from cold to cold.",
      "The same seed gives the same firing."
    },
    footerHeading = "%nExample%n",
    footer = "  climbwatch simulate --seed 3 --fault stall --out stall.csv")
final class SimulateCommand implements Callable<Integer> {
  /** Simulated firings begin on a fixed evening, so that a seed gives the same file. */
  private static final long EVENING_MS = 1_767_286_800_000L;

  private static final double COLD_C = 60;

  @Mixin private ConfigOption config = new ConfigOption();

  @Option(names = "--seed", paramLabel = "N", description = "Another number, another evening.")
  private Optional<Long> seed = Optional.empty();

  @Option(
      names = "--fault",
      paramLabel = "KIND",
      description =
          "What goes wrong: none, stall, burner_out, runaway, open_circuit, short_to_ground,"
              + " probe_noise, sparks, silence, reversed, reversed_twice, short_to_supply, stuck, jumps,"
              + " hot_box, box_draught, drift, hum. With several probes, with the first.")
  private Optional<String> fault = Optional.empty();

  @Option(
      names = "--firing",
      paramLabel = "KIND",
      description = "stoneware, fast_reduction or demo (default stoneware, or the settings').")
  private Optional<String> firing = Optional.empty();

  @Option(
      names = "--rest",
      paramLabel = "HOURS",
      description = "How long the kiln lies cold before it is lit, 0 to 48 (default 0).")
  private double restHours;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where to (default: standard output).")
  private Optional<Path> out = Optional.empty();

  @Override
  public Integer call() throws IOException {
    if (!(restHours >= 0 && restHours <= 48)) {
      throw new Refusal("--rest must be 0 to 48 hours, was " + restHours);
    }
    Configuration configuration = config.load();
    SimulationSettings settings = settings(configuration);
    List<Source> sources = sources(configuration, settings);
    try (OutputStream stream = Output.open(out);
        Progress progress = new Progress("simulated", "readings")) {
      FiringCsv csv = new FiringCsv(stream);
      csv.header();
      write(configuration, settings, sources, csv, progress);
      csv.flush();
    }
    return Main.WELL;
  }

  private void write(
      Configuration configuration,
      SimulationSettings settings,
      List<Source> sources,
      FiringCsv csv,
      Progress progress)
      throws IOException {
    Watch watch = new Watch(configuration.watch());
    boolean wasHot = false;
    long longestS = restMillis() / 1000 + settings.firing().cycle().toSeconds();
    long gasOffS = restMillis() / 1000 + settings.firing().gasOff().toSeconds();
    for (long second = 0; second < longestS; second++) {
      if (second == gasOffS) {
        gasOff(watch, csv, second * 1000);
      }
      double temperatureC = COLD_C;
      // the followed probe last, so that its temperature says when the kiln is cold
      for (int i = sources.size() - 1; i >= 0; i--) {
        Reading reading = sources.get(i).read(new Moment(0, second * 1000)).orElseThrow();
        Judged judged = watch.accept(new Input.Measured(reading)).judged().orElseThrow();
        row(csv, second * 1000, judged);
        progress.one();
        temperatureC = judged.temperatureC().orElse(COLD_C);
      }
      wasHot |= temperatureC > 3 * COLD_C;
      if (wasHot && temperatureC < COLD_C) {
        return;
      }
    }
  }

  /** The simulated potter says so, as a real one should. */
  private static void gasOff(Watch watch, FiringCsv csv, long elapsedMs) throws IOException {
    watch.accept(new Input.Declared(new Moment(0, elapsedMs), Phase.COOLING));
    csv.deed(EVENING_MS + elapsedMs, elapsedMs, Phase.COOLING.word(), "", "declared");
  }

  private static void row(FiringCsv csv, long elapsedMs, Judged judged) throws IOException {
    int emf = FiringCsv.NONE;
    int cold = FiringCsv.NONE;
    int samples = FiringCsv.NONE;
    int spread = FiringCsv.NONE;
    if (judged.reading() instanceof Reading.Emf raw) {
      emf = (int) Math.rint(raw.emfMv() * 10_000);
      cold = (int) Math.rint(raw.coldJunctionC() * 1000);
      samples = raw.samples();
      spread = samples == 1 ? FiringCsv.NONE : (int) Math.rint(raw.spreadMv() * 10_000);
    }
    csv.reading(
        EVENING_MS + elapsedMs,
        elapsedMs,
        judged.reading().probe(),
        steps(judged.temperatureC().orElse(Double.NaN), 1000),
        steps(judged.uncertaintyC().orElse(Double.NaN), 100),
        steps(judged.climb().map(climb -> climb.cPerHour()).orElse(Double.NaN), 10),
        emf,
        cold,
        judged.fault().map(Fault::word).orElse("good"),
        judged.phase().word(),
        samples,
        spread,
        FiringCsv.NONE);
  }

  private static int steps(double value, int perUnit) {
    return Double.isNaN(value) ? FiringCsv.NONE : (int) Math.rint(value * perUnit);
  }

  private long restMillis() {
    return Math.round(restHours * 3600) * 1000;
  }

  /** The first as the command says; further ones that are models of the same kiln beside it. */
  private List<Source> sources(Configuration configuration, SimulationSettings first) {
    List<Source> sources = new ArrayList<>();
    for (int i = 0; i < configuration.sources().size(); i++) {
      String probe = configuration.watch().probes().get(i).name();
      if (i == 0) {
        sources.add(new SimulatedSource(probe, first, restMillis()));
      } else if (configuration.sources().get(i) instanceof ProbeSource.Model model) {
        SimulationSettings own = Sources.simulation(model);
        sources.add(
            new SimulatedSource(
                probe,
                new SimulationSettings(
                    first.firing(), first.seed(), own.fault(), own.place(), own.looks()),
                restMillis()));
      }
    }
    return sources;
  }

  private SimulationSettings settings(Configuration configuration) {
    SimulationSettings base =
        configuration.source() instanceof ProbeSource.Model model
            ? Sources.simulation(model)
            : new SimulationSettings(FiringKind.STONEWARE, 1, FaultKind.NONE);
    try {
      return new SimulationSettings(
          firing.map(FiringKind::ofWord).orElse(FiringKind.STONEWARE),
          seed.orElse(base.seed()),
          fault.map(FaultKind::ofWord).orElse(base.fault()),
          base.place(),
          base.looks());
    } catch (IllegalArgumentException unknown) {
      throw new Refusal(unknown.getMessage());
    }
  }
}
