package org.climbwatch.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.Watch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Reads the configuration, listens to the probe for a few seconds and says how it is. */
@Command(
    name = "check",
    description = {
      "Reads the settings, takes readings from each probe for a few seconds and prints a table.",
      "Exit 0 when all is well, 1 when a probe is not."
    },
    footerHeading = "%nExample%n",
    footer = "  climbwatch check --config climbwatch.toml")
final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private ConfigOption config = new ConfigOption();

  @Option(
      names = "--seconds",
      paramLabel = "N",
      defaultValue = "5",
      description = "How long to listen, 1 to 600 (default 5).")
  private int seconds;

  @Override
  public Integer call() throws IOException, InterruptedException {
    if (seconds < 1 || seconds > 600) {
      throw new Refusal("--seconds " + seconds + " is out of range; allowed: 1 to 600");
    }
    Configuration configuration = config.load();
    List<Judged> looks;
    String device;
    try (Source source = Sources.open(configuration, 0)) {
      looks = listen(configuration, source);
      device = source.describe();
    }
    return print(configuration, looks, device) ? Main.WELL : Main.NOT_WELL;
  }

  private List<Judged> listen(Configuration configuration, Source source)
      throws InterruptedException {
    Watch watch = new Watch(configuration.watch());
    long intervalMillis = configuration.interval().toMillis();
    List<Judged> looks = new ArrayList<>();
    for (long millis = 0; millis <= seconds * 1000L; millis += intervalMillis) {
      Optional<Reading> reading = source.read(new Moment(0, millis));
      if (reading.isPresent()) {
        watch.accept(new Input.Measured(reading.get())).judged().ifPresent(looks::add);
      }
      Thread.sleep((long) (intervalMillis / configuration.source().speed()));
    }
    return looks;
  }

  private boolean print(Configuration configuration, List<Judged> looks, String device) {
    PrintWriter out = spec.commandLine().getOut();
    List<Judged> good = looks.stream().filter(look -> look.temperatureC().isPresent()).toList();
    out.printf(
        "%-10s %12s %14s %16s %10s  %s%n",
        "probe", "emf mV", "cold junct. C", "temperature C", "noise C", "faults");
    out.printf(
        "%-10s %12s %14s %16s %10s  %s%n",
        configuration.watch().probe().name(),
        good.isEmpty() ? "-" : emf(last(good).reading()),
        good.isEmpty() ? "-" : coldJunction(last(good).reading()),
        good.isEmpty() ? "-" : temperature(last(good)),
        good.size() < 3 ? "-" : String.format(Locale.ROOT, "%.2f", noiseC(good)),
        faults(looks));
    out.println(device);
    boolean well = !looks.isEmpty() && good.size() == looks.size();
    out.println(
        well
            ? "All well: " + good.size() + " readings."
            : looks.isEmpty()
                ? "Not well: no reading in " + seconds + " s."
                : "Not well: "
                    + (looks.size() - good.size())
                    + " of "
                    + looks.size()
                    + " readings carry a fault; "
                    + last(looks).fault().map(Fault::plainly).orElse("the last one is good")
                    + ".");
    out.flush();
    return well;
  }

  private static Judged last(List<Judged> looks) {
    return looks.get(looks.size() - 1);
  }

  private static String emf(Reading reading) {
    return reading instanceof Reading.Emf emf
        ? String.format(Locale.ROOT, "%.4f", emf.emfMv())
        : "-";
  }

  private static String coldJunction(Reading reading) {
    return reading instanceof Reading.Emf emf
        ? String.format(Locale.ROOT, "%.2f", emf.coldJunctionC())
        : "-";
  }

  private static String temperature(Judged look) {
    return String.format(
        Locale.ROOT,
        "%.1f +/- %.0f",
        look.temperatureC().orElseThrow(),
        look.uncertaintyC().orElseThrow());
  }

  /** Half the mean size of a step from one reading to the next: a climb hardly shows in it. */
  private static double noiseC(List<Judged> good) {
    double sum = 0;
    for (int i = 1; i < good.size(); i++) {
      sum +=
          Math.abs(
              good.get(i).temperatureC().orElseThrow()
                  - good.get(i - 1).temperatureC().orElseThrow());
    }
    return sum / (good.size() - 1) / 2;
  }

  private static String faults(List<Judged> looks) {
    Map<String, Integer> counts = new TreeMap<>();
    for (Judged look : looks) {
      look.fault().ifPresent(fault -> counts.merge(fault.word(), 1, Integer::sum));
    }
    if (looks.isEmpty()) {
      return "no reading";
    }
    StringBuilder text = new StringBuilder();
    counts.forEach(
        (word, count) ->
            text.append(text.isEmpty() ? "" : ", ").append(word).append(" x ").append(count));
    return text.isEmpty() ? "none" : text.toString();
  }
}
