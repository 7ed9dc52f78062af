package org.climbwatch.ensemble;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.climbwatch.alarm.AlarmKind;

/**
 * What do forecast and alarms do over many kilns, potters and troubles? Odd seeds are for
 * development; even ones were held back and have been looked at more than once since. Those of the
 * last set, {@code unseen}, are looked at once, when nothing is changed any more.
 *
 * <pre>
 *   mvn -q -Pensemble test-compile exec:exec                        the development half
 *   mvn -q -Pensemble test-compile exec:exec -Densemble.half=held   the half held back
 *   mvn -q -Pensemble test-compile exec:exec -Densemble.half=unseen the last set
 * </pre>
 */
public final class EnsembleReport {
  private static final double[] LEAST = {5, 10, 15, 20, 25, 30, 35, 40, 50, 60};
  private static final double[] MINUTES = {5, 6, 7, 8, 9, 10, 11, 12, 15, 20, 25, 30, 40, 50, 60};
  private static final double MOST_FALSE_PER_100H = 1;

  /** What the development half finds to be the plain rule at its best; for the others. */
  private static final PlainRule FOUND_BEST = new PlainRule(60, 40);

  private static final Map<String, Long> FIRST_SEEDS =
      Map.of("development", 1L, "held", 2L, "unseen", 10_001L);

  private EnsembleReport() {}

  /**
   * @param args {@code development}, {@code held} or {@code unseen}, and how many firings
   */
  public static void main(String[] args) {
    long firstSeed = FIRST_SEEDS.get(args[0]);
    boolean held = !args[0].equals("development");
    int count = Integer.parseInt(args[1]);
    List<Followed> firings =
        LongStream.range(0, count)
            .parallel()
            .mapToObj(i -> new Followed(firstSeed + 2 * i))
            .toList();
    say("half %s, %d firings", args[0], count);
    kinds(firings);
    Score ahead = new Score(firings, one -> one.stood(AlarmKind.STALL_AHEAD));
    print("stall ahead, as shipped", ahead);
    if (!held) {
      say("  to look at, kind seed@minute: %s", ahead.odd);
    }
    print(
        "stall ahead, climb stalled or sagging, whichever speaks",
        new Score(firings, Followed::weakFire));
    Score weakFire = new Score(firings, Followed::weakOrLost);
    print("these or falling, which takes over from them", weakFire);
    if (!held) {
      say("  missed: %s", weakFire.odd.stream().filter(one -> one.startsWith("missed")).toList());
    }
    print(
        "climb stalled, as shipped", new Score(firings, one -> one.stood(AlarmKind.CLIMB_STALLED)));
    Score sagging = new Score(firings, one -> one.stood(AlarmKind.SAGGING));
    print("sagging, as shipped", sagging);
    if (!held) {
      say("  to look at: %s", sagging.odd);
    }
    PlainRule best = held ? FOUND_BEST : bestPlain(firings, false);
    against(firings, weakFire, "plain rule at its best", best);
    if (!held) {
      against(firings, weakFire, "plain rule, undeclared holds forgiven", bestPlain(firings, true));
    }
    print("plain rule, 20 °C/h for 10 min", plain(firings, new PlainRule(20, 10)));
    coverage(firings);
    lostFlames(firings);
    speed(firings);
  }

  private static void kinds(List<Followed> firings) {
    TreeMap<String, int[]> kinds = new TreeMap<>();
    for (Followed one : firings) {
      int[] counts = kinds.computeIfAbsent(one.firing.kind(), any -> new int[3]);
      counts[0]++;
      counts[1] += one.firing.targetS() >= 0 ? 1 : 0;
      counts[2] += one.stallS() >= 0 ? 1 : 0;
    }
    kinds.forEach((kind, n) -> say("  %-15s %3d: target %3d, stalled %3d", kind, n[0], n[1], n[2]));
  }

  private static Score plain(List<Followed> firings, PlainRule rule) {
    return new Score(firings, one -> rule.stood(one.looks));
  }

  /**
   * Among settings with few enough false alarms: first those that warn of 98 % or more, the
   * earliest of them; else the one that warns of most.
   */
  private static PlainRule bestPlain(List<Followed> firings, boolean forgiven) {
    PlainRule best = new PlainRule(LEAST[0], MINUTES[MINUTES.length - 1]);
    double bestRank = Double.NEGATIVE_INFINITY;
    for (double least : LEAST) {
      for (double minutes : MINUTES) {
        PlainRule rule = new PlainRule(least, minutes);
        Score score = plain(firings, rule);
        int counted = score.falseAlarms - (forgiven ? score.inHolds : 0);
        boolean quiet = 100 * counted / score.hours <= MOST_FALSE_PER_100H;
        double share = Math.min(score.share(), 98);
        double rank = share * 1e4 - score.medianDelayMinutes();
        if (quiet && rank > bestRank) {
          bestRank = rank;
          best = rule;
        }
      }
    }
    return best;
  }

  private static void against(List<Followed> firings, Score ahead, String name, PlainRule rule) {
    Score plain = plain(firings, rule);
    print(
        String.format(
            Locale.ROOT, "%s: %.0f °C/h for %.0f min", name, rule.leastCPerHour(), rule.minutes()),
        plain);
    List<Double> leads = new ArrayList<>();
    ahead.delayS.forEach(
        (seed, delay) ->
            leads.add(plain.delayS.getOrDefault(seed, Double.POSITIVE_INFINITY) - delay));
    leads.sort(null);
    say(
        "  lead over it: median %.1f min; a quarter has less than %.1f",
        Score.median(leads) / 60, leads.isEmpty() ? 0 : leads.get(leads.size() / 4) / 60);
  }

  private static void print(String name, Score score) {
    say("%s", name);
    say(
        "  stalls %d, warned of %d (%.1f %%), before the climb was gone %d; median %.1f min after",
        score.stalls, score.warned, score.share(), score.before, score.medianDelayMinutes());
    say(
        "  false alarms %d in %.0f healthy hours: %.2f in 100 h (in undeclared holds %d of them)",
        score.falseAlarms, score.hours, score.falsePer100h(), score.inHolds);
  }

  private static void coverage(List<Followed> firings) {
    int all = 0;
    int level = 0;
    int arrival = 0;
    for (Followed one : firings) {
      for (Followed.Check check : one.checks) {
        all++;
        level += within(check.trueLevelC(), check.levelC().low() - 3, check.levelC().high() + 3);
        double lowS = check.arrivalS().low() * 0.98;
        arrival += within(check.trueArrivalS(), lowS, check.arrivalS().high() * 1.02);
      }
    }
    say(
        "intervals: of %d forecasts the true level lies in %.1f %%, the true arrival in %.1f %%",
        all, 100.0 * level / all, 100.0 * arrival / all);
  }

  private static int within(double value, double low, double high) {
    return value >= low && value <= high ? 1 : 0;
  }

  private static void lostFlames(List<Followed> firings) {
    List<Double> seconds = new ArrayList<>();
    int lost = 0;
    for (Followed one : firings) {
      if (one.firing.kind().equals("flame_lost") && one.whenTroubledC() > 300) {
        lost++;
        double since = one.firing.troubleSinceS();
        fallingS(one)
            .filter(at -> at >= since)
            .findFirst()
            .ifPresent(at -> seconds.add(at - since));
        late(one, since);
      }
    }
    seconds.sort(null);
    long inTime = seconds.stream().filter(s -> s <= 60).count();
    say(
        "lost flames above 300 °C: %d, alarm for %d, within 60 s for %d; median %.0f s, worst %.0f s",
        lost,
        seconds.size(),
        inTime,
        Score.median(seconds),
        seconds.isEmpty() ? Double.NaN : seconds.get(seconds.size() - 1));
    Score falling = new Score(firings, Followed::fallingWithGasOn);
    say(
        "  false ones: %d in %.0f healthy hours: %.2f in 100 h",
        falling.falseAlarms, falling.hours, falling.falsePer100h());
  }

  private static DoubleStream fallingS(Followed one) {
    return one.stood(AlarmKind.FALLING).stream().mapToDouble(Stood::fromS);
  }

  private static void late(Followed one, double since) {
    boolean inTime = fallingS(one).anyMatch(at -> at >= since && at <= since + 60);
    if (!inTime) {
      say(
          "  late: seed %d, lost at %.0f °C, probe lag %.0f s, %.1f °C lower after a minute, at %s s",
          one.seed,
          one.whenTroubledC(),
          one.firing.probeLagS(one.whenTroubledC()),
          one.whenTroubledC() - one.minuteLaterC(),
          fallingS(one).filter(at -> at >= since).map(at -> at - since).boxed().toList());
    }
  }

  private static void speed(List<Followed> firings) {
    long nanos = Stream.of(firings).flatMap(List::stream).mapToLong(one -> one.nanos).sum();
    long readings = firings.stream().mapToLong(one -> one.readings).sum();
    say("a step with all rules and the forecast: %.2f µs on average", nanos / 1e3 / readings);
  }

  private static void say(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}
