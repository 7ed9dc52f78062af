package org.climbwatch.app.config;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.RuleKind;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Rules;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Plan;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.WatchSettings;

/**
 * The settings in force as lines of {@code key=value}, for the journal's record: nothing is lost,
 * delays to the millisecond. A key that a later version adds is read as its default from an older
 * record.
 */
public final class SettingsText {
  private SettingsText() {}

  /** All settings, sorted by key. */
  public static String encode(WatchSettings settings) {
    Map<String, String> lines = new TreeMap<>();
    lines.put("kiln", SettingsLines.escaped(settings.kiln()));
    settings.targetC().ifPresent(target -> lines.put("target_c", "" + target));
    for (int i = 0; i < settings.probes().size(); i++) {
      ProbeLines.put(lines, probeKey(i), settings.probes().get(i));
    }
    SignalSettings signal = settings.signal();
    lines.put("climb.window_s", "" + signal.climbWindowSeconds());
    lines.put("climb.fall_window_s", "" + signal.fallWindowSeconds());
    lines.put("climb.spike_c", "" + signal.spikeC());
    putFiring(lines, settings.firing());
    putAlarms(lines, settings.alarm());
    StringBuilder text = new StringBuilder();
    lines.forEach((key, value) -> text.append(key).append('=').append(value).append('\n'));
    return text.toString();
  }

  /**
   * Back again.
   *
   * @throws IllegalArgumentException when a line cannot be read, stands twice or is unknown
   */
  public static WatchSettings decode(String text) {
    SettingsLines lines = new SettingsLines(text);
    OptionalDouble targetC = lines.optionalNumber("target_c");
    WatchSettings settings =
        new WatchSettings(
            lines.text("kiln", "kiln"),
            targetC,
            probes(lines),
            signal(lines),
            firing(lines),
            alarms(lines));
    lines.refuseTheRest();
    return settings;
  }

  /** The first probe's lines have no number, as in a record of a version that knew only one. */
  private static String probeKey(int index) {
    return index == 0 ? "probe." : "probe." + (index + 1) + ".";
  }

  private static List<ProbeSettings> probes(SettingsLines lines) {
    List<ProbeSettings> probes = new ArrayList<>();
    do {
      probes.add(ProbeLines.take(lines, probeKey(probes.size())));
    } while (lines.has(probeKey(probes.size()) + "name"));
    return probes;
  }

  private static SignalSettings signal(SettingsLines lines) {
    SignalSettings usual = SignalSettings.DEFAULT;
    return new SignalSettings(
        lines.number("climb.window_s", usual.climbWindowSeconds()),
        lines.number("climb.fall_window_s", usual.fallWindowSeconds()),
        lines.number("climb.spike_c", usual.spikeC()));
  }

  private static void putFiring(Map<String, String> lines, FiringSettings firing) {
    lines.put("firing.begins_by_itself", "" + firing.beginsByItself());
    lines.put("firing.begin_rise_c", "" + firing.beginRiseC());
    lines.put("firing.dry_below_c", "" + firing.dryBelowC());
    lines.put("firing.cooling_drop_c", "" + firing.coolingDropC());
    lines.put("firing.cooling_after_s", "" + firing.coolingAfterSeconds());
    lines.put("firing.end_below_c", "" + firing.endBelowC());
    firing.holdMinutes().ifPresent(minutes -> lines.put("firing.hold_min", "" + minutes));
    for (int i = 0; i < firing.plan().segments().size(); i++) {
      Plan.Segment segment = firing.plan().segments().get(i);
      String key = "plan." + (i + 1) + ".";
      lines.put(key + "rate_c_per_h", "" + segment.rateCPerHour());
      lines.put(key + "to_c", "" + segment.toC());
      lines.put(key + "hold_min", "" + segment.holdMinutes());
    }
  }

  private static FiringSettings firing(SettingsLines lines) {
    FiringSettings usual = FiringSettings.DEFAULT;
    return new FiringSettings(
        lines.flag("firing.begins_by_itself", usual.beginsByItself()),
        lines.number("firing.begin_rise_c", usual.beginRiseC()),
        lines.number("firing.dry_below_c", usual.dryBelowC()),
        lines.number("firing.cooling_drop_c", usual.coolingDropC()),
        lines.number("firing.cooling_after_s", usual.coolingAfterSeconds()),
        lines.number("firing.end_below_c", usual.endBelowC()),
        lines.optionalNumber("firing.hold_min"),
        plan(lines));
  }

  private static Plan plan(SettingsLines lines) {
    List<Plan.Segment> segments = new ArrayList<>();
    for (int i = 1; lines.has("plan." + i + ".to_c"); i++) {
      String key = "plan." + i + ".";
      segments.add(
          new Plan.Segment(
              lines.number(key + "rate_c_per_h", 0),
              lines.number(key + "to_c", 0),
              lines.number(key + "hold_min", 0)));
    }
    return new Plan(segments);
  }

  private static void putAlarms(Map<String, String> lines, AlarmSettings alarm) {
    lines.put("alarm.reannounce_after_ms", "" + alarm.reannounceAfter().toMillis());
    for (RuleSettings rule : alarm.rules()) {
      String key = rule.alarm().word() + ".";
      lines.put(key + "enabled", "" + rule.enabled());
      rule.numbers().forEach((name, value) -> lines.put(key + name, "" + value));
      lines.put(key + "on_delay_ms", "" + rule.delays().on().toMillis());
      lines.put(key + "off_delay_ms", "" + rule.delays().off().toMillis());
    }
  }

  private static AlarmSettings alarms(SettingsLines lines) {
    List<RuleSettings> rules = new ArrayList<>();
    for (RuleKind kind : Rules.ALL) {
      String rule = kind.alarm().word();
      boolean enabled = lines.flag(rule + ".enabled", true);
      Map<String, Double> numbers = new TreeMap<>();
      for (RuleKind.Number number : kind.numbers()) {
        String key = rule + "." + number.key();
        numbers.put(number.key(), lines.number(key, number.usual()));
      }
      rules.add(kind.settings(enabled, numbers, lines.delays(rule, kind.usualDelays())));
    }
    return new AlarmSettings(
        rules, lines.millis("alarm.reannounce_after_ms", AlarmSettings.USUAL_REMINDER));
  }
}
