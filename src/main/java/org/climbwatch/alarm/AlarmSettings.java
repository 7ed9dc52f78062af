package org.climbwatch.alarm;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * The settings of all rules.
 *
 * @param rules one for each of {@link Rules#ALL}, in that order
 * @param reannounceAfter 1 min to 2 h: an alarm that stays unanswered for so long is said again,
 *     and then after twice, four and eight times as long
 */
public record AlarmSettings(List<RuleSettings> rules, Duration reannounceAfter) {
  public static final Duration SOONEST_REMINDER = Duration.ofMinutes(1);
  public static final Duration LATEST_REMINDER = Duration.ofHours(2);
  public static final Duration USUAL_REMINDER = Duration.ofMinutes(5);

  public static final AlarmSettings DEFAULT =
      new AlarmSettings(Rules.ALL.stream().map(RuleKind::usual).toList());

  public AlarmSettings {
    rules = List.copyOf(rules);
    if (reannounceAfter.compareTo(SOONEST_REMINDER) < 0
        || reannounceAfter.compareTo(LATEST_REMINDER) > 0) {
      throw new IllegalArgumentException(
          "an alarm is said again after 60 to 7200 s, not " + reannounceAfter);
    }
    for (int i = 0; i < Rules.ALL.size(); i++) {
      if (rules.size() != Rules.ALL.size() || rules.get(i).alarm() != Rules.ALL.get(i).alarm()) {
        throw new IllegalArgumentException("settings must be of each rule, in the rules' order");
      }
    }
  }

  /** The usual reminders. */
  public AlarmSettings(List<RuleSettings> rules) {
    this(rules, USUAL_REMINDER);
  }

  /** The settings of one rule. */
  public RuleSettings of(AlarmKind alarm) {
    for (RuleSettings rule : rules) {
      if (rule.alarm() == alarm) {
        return rule;
      }
    }
    throw new IllegalArgumentException("no rule raises " + alarm);
  }

  /** The same with other settings of one rule. */
  public AlarmSettings with(RuleSettings other) {
    List<RuleSettings> changed = new ArrayList<>();
    for (RuleSettings rule : rules) {
      changed.add(rule.alarm() == other.alarm() ? other : rule);
    }
    return new AlarmSettings(changed, reannounceAfter);
  }
}
