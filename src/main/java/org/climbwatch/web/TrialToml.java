package org.climbwatch.web;

import java.math.BigDecimal;
import java.util.List;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Rules;

/** Settings of rules as the configuration file writes them. */
final class TrialToml {
  private TrialToml() {}

  /**
   * A whole table for each rule, with every key, so that it can stand in place of the old one. What
   * is not as in force says what that is.
   */
  static String tables(List<RuleSettings> rules, AlarmSettings inForce) {
    StringBuilder toml = new StringBuilder();
    for (RuleSettings rule : rules) {
      RuleSettings now = inForce.of(rule.alarm());
      toml.append(toml.isEmpty() ? "" : "\n");
      toml.append("[alarm.").append(rule.alarm().word()).append("]\n");
      line(toml, "enabled", "" + rule.enabled(), "" + now.enabled());
      for (RuleKind.Number number : RuleChange.settable(Rules.of(rule.alarm()))) {
        String key = number.key();
        line(toml, key, plain(RuleChange.value(rule, key)), plain(RuleChange.value(now, key)));
      }
    }
    return toml.toString();
  }

  private static void line(StringBuilder toml, String key, String value, String now) {
    toml.append(key).append(" = ").append(value);
    toml.append(value.equals(now) ? "\n" : "  # was " + now + "\n");
  }

  /** Without an exponent and trailing zeros. */
  static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
