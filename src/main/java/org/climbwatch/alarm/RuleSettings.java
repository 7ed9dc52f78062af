package org.climbwatch.alarm;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * The settings of one rule, checked by its {@link RuleKind}.
 *
 * @param numbers by key
 */
public record RuleSettings(
    AlarmKind alarm, boolean enabled, Map<String, Double> numbers, Delays delays) {
  public RuleSettings {
    numbers = Collections.unmodifiableMap(new TreeMap<>(numbers));
  }

  /** One of the numbers. */
  public double number(String key) {
    Double value = numbers.get(key);
    if (value == null) {
      throw new IllegalArgumentException(alarm.word() + " has no setting " + key);
    }
    return value;
  }
}
