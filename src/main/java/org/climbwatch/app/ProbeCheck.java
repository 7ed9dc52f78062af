package org.climbwatch.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.climbwatch.alarm.FirstChecks;
import org.climbwatch.reading.Reading;
import org.climbwatch.watch.Judged;

/** What some seconds of one probe's readings say of it. */
final class ProbeCheck {
  static final String HEADING =
      String.format(
          "%-10s %12s %14s %16s %10s  %s",
          "probe", "emf mV", "cold junct. C", "temperature C", "noise C", "faults");

  private final String probe;
  private final List<Judged> looks = new ArrayList<>();
  private final List<Judged> good = new ArrayList<>();

  ProbeCheck(String probe) {
    this.probe = probe;
  }

  void take(Judged look) {
    looks.add(look);
    if (look.temperatureC().isPresent()) {
      good.add(look);
    }
  }

  String probe() {
    return probe;
  }

  boolean well() {
    return !looks.isEmpty() && good.size() == looks.size();
  }

  /** °C of the good readings, in their order. */
  double[] readC() {
    return good.stream().mapToDouble(look -> look.temperatureC().orElseThrow()).toArray();
  }

  /** How many readings carry a fault. */
  int faulty() {
    return looks.size() - good.size();
  }

  /** One line under the {@link #HEADING}. */
  String row() {
    return String.format(
        "%-10s %12s %14s %16s %10s  %s",
        probe,
        good.isEmpty() ? "-" : emf(last(good).reading()),
        good.isEmpty() ? "-" : coldJunction(last(good).reading()),
        good.isEmpty() ? "-" : temperature(last(good)),
        noise(),
        faults());
  }

  /** A sentence: how many readings, and what is wrong with them. */
  String verdict(int seconds) {
    if (well()) {
      return "All well: " + good.size() + " readings.";
    }
    if (looks.isEmpty()) {
      return "Not well: no reading in "
          + seconds
          + " s. First check plug, supply and the port's name and speed; a slow device needs a longer"
          + " --seconds.";
    }
    return String.format(
        "Not well: %d of %d readings carry a fault; %s",
        looks.size() - good.size(),
        looks.size(),
        last(looks)
            .fault()
            .map(fault -> fault.plainly() + ". " + FirstChecks.of(fault).replace('\u2212', '-'))
            .orElse("the last one is good."));
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

  /** The spread of the looks that a reading is made of, as the device gives more than one. */
  private String noise() {
    double[] spreads =
        good.stream().flatMapToDouble(look -> look.spreadC().stream()).sorted().toArray();
    if (spreads.length > 0) {
      return String.format(Locale.ROOT, "%.2f", spreads[spreads.length / 2]);
    }
    return good.size() < 3 ? "-" : String.format(Locale.ROOT, "%.2f", noiseC());
  }

  /** Half the mean size of a step from one reading to the next: a climb hardly shows in it. */
  private double noiseC() {
    double sum = 0;
    for (int i = 1; i < good.size(); i++) {
      sum +=
          Math.abs(
              good.get(i).temperatureC().orElseThrow()
                  - good.get(i - 1).temperatureC().orElseThrow());
    }
    return sum / (good.size() - 1) / 2;
  }

  private String faults() {
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
