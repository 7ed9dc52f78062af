package org.climbwatch.web;

import java.math.BigDecimal;
import java.util.List;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Rules;

/** Settings of rules as the configuration file writes them. */
final class TrialToml {
  private TrialToml() {}

  /** A whole table for each rule, with every key, so that it can stand in place of the old one. */
  static String tables(List<RuleSettings> rules) {
    StringBuilder toml = new StringBuilder();
    for (RuleSettings rule : rules) {
      toml.append(toml.isEmpty() ? "" : "\n");
      toml.append("[alarm.").append(rule.alarm().word()).append("]\n");
      toml.append("enabled = ").append(rule.enabled()).append('\n');
      for (RuleKind.Number number : RuleChange.settable(kind(rule))) {
        double value = RuleChange.value(rule, number.key());
        toml.append(number.key()).append(" = ").append(plain(value)).append('\n');
      }
    }
    return toml.toString();
  }

  /** Without an exponent and trailing zeros. */
  static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private static RuleKind kind(RuleSettings rule) {
    return Rules.ALL.stream()
        .filter(each -> each.alarm() == rule.alarm())
        .findFirst()
        .orElseThrow();
  }
}
