package org.climbwatch.alarm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * One kind of rule: the settings that it knows, with defaults and limits, and how a rule is made of
 * them. A rule's file holds its own; {@link Rules} lists them all.
 *
 * @param alarm what its alarm is about; the alarm's word names the table of its settings
 * @param ofProbe whether it looks at each probe for itself, as against the firing alone
 * @param numbers its own settings besides the switch and the delays, in the order of the docs
 * @param usualDelays when nothing else is set
 * @param betterSaidBy alarms of the same cause that say more: while one of them is present this one
 *     keeps silent
 */
public record RuleKind(
    AlarmKind alarm,
    boolean ofProbe,
    List<Number> numbers,
    Delays usualDelays,
    List<AlarmKind> betterSaidBy,
    Function<RuleSettings, Rule> maker) {
  /**
   * A number that can be set.
   *
   * @param key lower-case, with its unit at the end
   * @param usual when nothing else is set
   */
  public record Number(String key, double usual, double low, double high) {}

  public RuleKind {
    numbers = List.copyOf(numbers);
    betterSaidBy = List.copyOf(betterSaidBy);
  }

  /** A rule that looks at the firing as its followed probe shows it. */
  static RuleKind ofFiring(AlarmKind alarm) {
    return bare(alarm, false);
  }

  /** A rule that looks at each probe for itself. */
  static RuleKind ofProbe(AlarmKind alarm) {
    return bare(alarm, true);
  }

  /** The same with one number more. */
  RuleKind number(String key, double usual, double low, double high) {
    List<Number> more = new ArrayList<>(numbers);
    more.add(new Number(key, usual, low, high));
    return new RuleKind(alarm, ofProbe, more, usualDelays, betterSaidBy, maker);
  }

  /** The same with its usual delays in seconds. */
  RuleKind delays(long on, long off) {
    return new RuleKind(alarm, ofProbe, numbers, Delays.ofSeconds(on, off), betterSaidBy, maker);
  }

  /** The same that keeps silent while one of these is present. */
  RuleKind betterSaidBy(AlarmKind... others) {
    return new RuleKind(alarm, ofProbe, numbers, usualDelays, List.of(others), maker);
  }

  /** The same with the way to make its rule. */
  RuleKind makes(Function<RuleSettings, Rule> how) {
    return new RuleKind(alarm, ofProbe, numbers, usualDelays, betterSaidBy, how);
  }

  /** The settings when nothing is set. */
  public RuleSettings usual() {
    Map<String, Double> values = new TreeMap<>();
    numbers.forEach(number -> values.put(number.key(), number.usual()));
    return settings(true, values, usualDelays);
  }

  /**
   * Settings of this kind.
   *
   * @param values one for each of the {@link #numbers}
   * @throws IllegalArgumentException when one is missing, unknown or out of its limits
   */
  public RuleSettings settings(boolean enabled, Map<String, Double> values, Delays delays) {
    if (values.size() != numbers.size()) {
      throw new IllegalArgumentException(alarm.word() + " knows " + numbers + ", not " + values);
    }
    for (Number number : numbers) {
      Double value = values.get(number.key());
      if (value == null || !(value >= number.low() && value <= number.high())) {
        throw new IllegalArgumentException(
            alarm.word()
                + "."
                + number.key()
                + " must be "
                + number.low()
                + " to "
                + number.high()
                + ", was "
                + value);
      }
    }
    return new RuleSettings(alarm, enabled, values, delays);
  }

  /**
   * What is wrong with numbers of which each is within its limits: a rule that looks from {@code
   * from_c} down to {@code to_c} would look nowhere.
   *
   * @return words to follow the key {@code from_c} and its value
   */
  public Optional<String> contradiction(Map<String, Double> values) {
    Double from = values.get("from_c");
    Double to = values.get("to_c");
    return from != null && to != null && from <= to
        ? Optional.of("must lie above to_c, or the rule never looks")
        : Optional.empty();
  }

  /** The rule under these settings. */
  public Rule rule(RuleSettings settings) {
    return settings.enabled() ? maker.apply(settings) : new OutOfService(alarm, settings.delays());
  }

  private static RuleKind bare(AlarmKind alarm, boolean ofProbe) {
    Delays atOnce = Delays.ofSeconds(0, 0);
    return new RuleKind(alarm, ofProbe, List.of(), atOnce, List.of(), RuleKind::unmade);
  }

  private static Rule unmade(RuleSettings settings) {
    throw new IllegalStateException(settings.alarm() + " does not say how its rule is made");
  }
}
