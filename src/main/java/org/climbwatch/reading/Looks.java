package org.climbwatch.reading;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Makes one reading of the looks of one interval.
 *
 * <p>The middle is the median, for signal and cold junction each on its own: fewer than half of the
 * looks, however wild, cannot move it out of the range of the others. Its own standard deviation
 * under normal noise is some 1.25 times the spread over the root of the number of good looks.
 *
 * <p>What decides:
 *
 * <ul>
 *   <li>Fewer faults than good looks: the faults are left out, as the open circuit that a chip
 *       reports for the one conversion which a spark has met.
 *   <li>More faults than good looks: the most frequent fault, the newer of two as frequent.
 *   <li>As many of each: whatever the newest look is, for that is how the probe is now.
 *   <li>Signals beside temperatures that the instrument has linearised: the more frequent kind, or
 *       that of the newest good look.
 * </ul>
 */
public final class Looks {
  /**
   * Median absolute deviation to standard deviation of normal noise: 1 over the 75 % point of the
   * standard normal distribution, 0.67449. Rousseeuw and Croux, Alternatives to the Median Absolute
   * Deviation, J. Am. Stat. Assoc. 88 (1993) 1273, give it to these places.
   */
  static final double TO_STANDARD_DEVIATION = 1.4826;

  private Looks() {}

  /**
   * The reading of an interval.
   *
   * @param at the moment that it is to carry
   * @param looks of one probe, the newest last; one that is itself made of several counts as one,
   *     and stays as it is when it is the only good one
   * @return empty when there were none
   */
  public static Optional<Reading> middle(Moment at, List<Reading> looks) {
    if (looks.isEmpty()) {
      return Optional.empty();
    }
    List<Reading> good = looks.stream().filter(look -> !(look instanceof Reading.Faulty)).toList();
    Reading newest = looks.get(looks.size() - 1);
    if (majority(good.size(), looks.size(), !(newest instanceof Reading.Faulty))) {
      return Optional.of(middleOfGood(at, good));
    }
    return Optional.of(Reading.faulty(at, newest.probe(), fault(looks)));
  }

  private static boolean majority(int count, int of, boolean newestIsOne) {
    return 2 * count > of || (2 * count == of && newestIsOne);
  }

  private static Fault fault(List<Reading> looks) {
    Map<Fault, Integer> counts = new EnumMap<>(Fault.class);
    Fault chosen = Fault.NO_ANSWER;
    for (Reading look : looks) {
      if (look instanceof Reading.Faulty faulty) {
        counts.merge(faulty.fault(), 1, Integer::sum);
      }
    }
    int most = 0;
    for (int i = looks.size() - 1; i >= 0; i--) {
      if (looks.get(i) instanceof Reading.Faulty faulty && counts.get(faulty.fault()) > most) {
        chosen = faulty.fault();
        most = counts.get(chosen);
      }
    }
    return chosen;
  }

  private static Reading middleOfGood(Moment at, List<Reading> good) {
    List<Reading.Emf> signals = only(good, Reading.Emf.class);
    boolean newestIsSignal = good.get(good.size() - 1) instanceof Reading.Emf;
    return majority(signals.size(), good.size(), newestIsSignal)
        ? emf(at, signals)
        : linearised(at, only(good, Reading.Linearised.class));
  }

  private static <T> List<T> only(List<Reading> looks, Class<T> kind) {
    return looks.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static Reading emf(Moment at, List<Reading.Emf> looks) {
    Reading.Emf newest = looks.get(looks.size() - 1);
    double[] emfMv = sorted(looks, Reading.Emf::emfMv);
    double coldJunctionC = median(sorted(looks, Reading.Emf::coldJunctionC));
    boolean single = looks.size() == 1;
    return Reading.emf(
        at,
        newest.probe(),
        median(emfMv),
        coldJunctionC,
        single ? newest.samples() : looks.size(),
        single ? newest.spreadMv() : spread(emfMv));
  }

  private static Reading linearised(Moment at, List<Reading.Linearised> looks) {
    Reading.Linearised newest = looks.get(looks.size() - 1);
    double[] temperatureC = sorted(looks, Reading.Linearised::temperatureC);
    List<Reading.Linearised> told =
        looks.stream().filter(look -> look.coldJunctionC().isPresent()).toList();
    OptionalDouble coldJunctionC =
        told.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(median(sorted(told, look -> look.coldJunctionC().getAsDouble())));
    boolean single = looks.size() == 1;
    return Reading.linearised(
        at,
        newest.probe(),
        median(temperatureC),
        coldJunctionC,
        single ? newest.samples() : looks.size(),
        single ? newest.spreadC() : spread(temperatureC));
  }

  private static <T> double[] sorted(List<T> looks, ToDoubleFunction<T> value) {
    double[] values = looks.stream().mapToDouble(value).toArray();
    Arrays.sort(values);
    return values;
  }

  /** Of an even number, half way between the two in the middle. */
  private static double median(double[] sorted) {
    int upper = sorted.length / 2;
    return sorted.length % 2 == 1
        ? sorted[upper]
        : sorted[upper - 1] + (sorted[upper] - sorted[upper - 1]) / 2;
  }

  private static double spread(double[] sorted) {
    double middle = median(sorted);
    double[] away = Arrays.stream(sorted).map(value -> Math.abs(value - middle)).toArray();
    Arrays.sort(away);
    return TO_STANDARD_DEVIATION * median(away);
  }
}
