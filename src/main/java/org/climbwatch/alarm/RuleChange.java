package org.climbwatch.alarm;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Other settings of one rule: what is not named stays as it is.
 *
 * @param numbers by the keys of {@link #settable}, in the units that their keys name
 */
public record RuleChange(RuleKind kind, Optional<Boolean> enabled, Map<String, Double> numbers) {
  private static final String ON_DELAY = "on_delay_s";
  private static final String OFF_DELAY = "off_delay_s";

  /**
   * @throws IllegalArgumentException for a key that the rule does not know, or a number out of its
   *     limits
   */
  public RuleChange {
    numbers = Collections.unmodifiableMap(new TreeMap<>(numbers));
    List<RuleKind.Number> known = settable(kind);
    numbers.forEach((key, value) -> require(known, key, value));
  }

  /** All numbers that can be set of a rule: its own, then its delays. */
  public static List<RuleKind.Number> settable(RuleKind kind) {
    List<RuleKind.Number> all = new ArrayList<>(kind.numbers());
    double longestS = seconds(Delays.LONGEST);
    all.add(new RuleKind.Number(ON_DELAY, seconds(kind.usualDelays().on()), 0, longestS));
    all.add(new RuleKind.Number(OFF_DELAY, seconds(kind.usualDelays().off()), 0, longestS));
    return all;
  }

  /** One of those numbers, as it is set. */
  public static double value(RuleSettings settings, String key) {
    return switch (key) {
      case ON_DELAY -> seconds(settings.delays().on());
      case OFF_DELAY -> seconds(settings.delays().off());
      default -> settings.number(key);
    };
  }

  /** The settings of this rule with the change made; delays to the millisecond. */
  public RuleSettings on(RuleSettings before) {
    Map<String, Double> own = new TreeMap<>(before.numbers());
    numbers.forEach((key, value) -> own.computeIfPresent(key, (same, old) -> value));
    Delays delays =
        new Delays(delay(ON_DELAY, before.delays().on()), delay(OFF_DELAY, before.delays().off()));
    return kind.settings(enabled.orElse(before.enabled()), own, delays);
  }

  private Duration delay(String key, Duration before) {
    Double seconds = numbers.get(key);
    return seconds == null ? before : Duration.ofMillis(Math.round(seconds * 1000));
  }

  private static double seconds(Duration delay) {
    return delay.toMillis() / 1000.0;
  }

  private static void require(List<RuleKind.Number> known, String key, double value) {
    for (RuleKind.Number number : known) {
      if (number.key().equals(key)) {
        if (!(value >= number.low() && value <= number.high())) {
          throw new IllegalArgumentException(number + " cannot be " + value);
        }
        return;
      }
    }
    throw new IllegalArgumentException("unknown key " + key + "; known: " + known);
  }
}
