package org.climbwatch.alarm;

import java.util.ArrayList;
import java.util.List;

/**
 * The settings of all rules.
 *
 * @param rules one for each of {@link Rules#ALL}, in that order
 */
public record AlarmSettings(List<RuleSettings> rules) {
  public static final AlarmSettings DEFAULT =
      new AlarmSettings(Rules.ALL.stream().map(RuleKind::usual).toList());

  public AlarmSettings {
    rules = List.copyOf(rules);
    for (int i = 0; i < Rules.ALL.size(); i++) {
      if (rules.size() != Rules.ALL.size() || rules.get(i).alarm() != Rules.ALL.get(i).alarm()) {
        throw new IllegalArgumentException("settings must be of each rule, in the rules' order");
      }
    }
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
    return new AlarmSettings(changed);
  }
}
