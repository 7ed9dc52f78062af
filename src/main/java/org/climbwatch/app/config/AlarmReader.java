package org.climbwatch.app.config;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.Delays;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Rules;

/**
 * The table {@code [alarm]} and in it one for each rule, with the keys that the rule itself names.
 */
final class AlarmReader {
  private final Section alarm;

  AlarmReader(Section alarm) {
    this.alarm = alarm;
  }

  AlarmSettings read() {
    List<RuleSettings> rules = new ArrayList<>();
    for (RuleKind kind : Rules.ALL) {
      rules.add(rule(kind, alarm.section(kind.alarm().word())));
    }
    double usual = AlarmSettings.USUAL_REMINDER.toSeconds();
    double soonest = AlarmSettings.SOONEST_REMINDER.toSeconds();
    double latest = AlarmSettings.LATEST_REMINDER.toSeconds();
    Duration reannounceAfter = seconds(alarm.number("reannounce_after_s", usual, soonest, latest));
    alarm.refuseTheRest();
    return new AlarmSettings(rules, reannounceAfter);
  }

  private static RuleSettings rule(RuleKind kind, Section table) {
    boolean enabled = table.flag("enabled", true);
    Map<String, Double> numbers = new TreeMap<>();
    for (RuleKind.Number number : kind.numbers()) {
      numbers.put(
          number.key(), table.number(number.key(), number.usual(), number.low(), number.high()));
    }
    kind.contradiction(numbers).ifPresent(why -> refuse(table, numbers, why));
    double longest = Delays.LONGEST.toSeconds();
    Delays usual = kind.usualDelays();
    Delays delays =
        new Delays(
            seconds(table.number("on_delay_s", usual.on().toMillis() / 1000.0, 0, longest)),
            seconds(table.number("off_delay_s", usual.off().toMillis() / 1000.0, 0, longest)));
    table.refuseTheRest();
    return kind.settings(enabled, numbers, delays);
  }

  private static void refuse(Section table, Map<String, Double> numbers, String why) {
    String key = table.has("from_c") ? "from_c" : "to_c";
    String other = key.equals("from_c") ? "to_c" : "from_c";
    String seen = "is set, and " + other + " is " + Shown.plain(numbers.get(other));
    table.wrong(key, numbers.get(key), seen, "from_c " + why);
  }

  private static Duration seconds(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }
}
