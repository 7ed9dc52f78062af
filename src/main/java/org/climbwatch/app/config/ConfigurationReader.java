package org.climbwatch.app.config;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Plan;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.WatchSettings;
import org.tomlj.TomlTable;

/** Goes through the tables of a file; each table's keys, defaults and ranges stand in one place. */
final class ConfigurationReader {
  /** More than any small kiln has places for. */
  private static final int MOST_PROBES = 8;

  private final Section root;
  private final Mistakes mistakes;

  ConfigurationReader(TomlTable toml, Mistakes mistakes) {
    this.mistakes = mistakes;
    root = new Section("", Optional.of(toml), 0, mistakes);
  }

  Configuration read() {
    Section kiln = root.section("kiln");
    String name = kiln.text("name").orElse("kiln");
    OptionalDouble targetC = kiln.optionalNumber("target_c", 50, 1400);
    kiln.refuseTheRest();
    List<ProbeReader> probes = probes();
    SignalSettings signal = signal(root.section("climb"));
    FiringSettings firing = firing(root.section("firing"), plan());
    AlarmReader alarm = new AlarmReader(root.section("alarm"));
    Section sampling = root.section("sampling");
    double intervalS = sampling.number("interval_s", 1, 0.1, 10);
    boolean burst = sampling.flag("burst", true);
    sampling.refuseTheRest();
    ServerSettings server = new ServerTable(root.section("server")).read();
    Section data = root.section("data");
    Path directory = data.path("directory").orElse(Path.of("climbwatch-data"));
    data.refuseTheRest();
    root.refuseTheRest();
    AlarmSettings alarms = alarm.read();
    limitsFit(kiln, targetC, probes.get(0).settings(), alarms.of(AlarmKind.OVER_TEMPERATURE));
    mistakes.throwIfAny();
    return new Configuration(
        new WatchSettings(
            name,
            targetC,
            probes.stream().map(ProbeReader::settings).toList(),
            signal,
            firing,
            alarms),
        probes.stream().map(ProbeReader::source).toList(),
        probes.stream().map(ProbeReader::fitted).toList(),
        Duration.ofMillis(Math.round(intervalS * 1000)),
        burst,
        server,
        directory);
  }

  /** A limit that the target or the couple never lets be of use is no limit. */
  private void limitsFit(
      Section kiln, OptionalDouble targetC, ProbeSettings probe, RuleSettings limit) {
    if (!limit.enabled()) {
      return;
    }
    double limitC = limit.number("limit_c");
    if (targetC.isPresent() && targetC.getAsDouble() >= limitC) {
      kiln.wrong(
          "target_c",
          targetC.getAsDouble(),
          "is not below alarm.over_temperature.limit_c = " + Shown.plain(limitC),
          "raise that limit or lower the target");
    }
    if (limitC >= probe.type().highestC()) {
      Section table = root.section("alarm").section("over_temperature");
      table.wrong(
          "limit_c",
          limitC,
          "is not below "
              + Shown.plain(probe.type().highestC())
              + ", the end of Type "
              + probe.type(),
          "lower it, or the alarm can never come");
    }
  }

  private List<ProbeReader> probes() {
    List<Section> tables = root.sections("probe");
    if (tables.isEmpty()) {
      probeIsMissing();
      return List.of(new ProbeReader(new Section("probe", Optional.empty(), 0, mistakes)));
    }
    if (tables.size() > MOST_PROBES) {
      mistakes.add(
          tables.get(MOST_PROBES).line(),
          "probe number " + (MOST_PROBES + 1) + "; at most " + MOST_PROBES + ", take some out");
    }
    List<ProbeReader> probes = tables.stream().map(ProbeReader::new).toList();
    for (int i = 1; i < probes.size(); i++) {
      differs(tables.get(i), probes.get(i), probes.subList(0, i));
    }
    return probes;
  }

  /** A probe needs a name of its own, and a time that runs as that of the others. */
  private static void differs(Section table, ProbeReader probe, List<ProbeReader> before) {
    String name = probe.settings().name();
    if (before.stream().anyMatch(other -> other.settings().name().equals(name))) {
      table.wrong("name", name, "is the name of another probe", "give each its own");
    }
    LineSharing.check(table, probe.source(), before.stream().map(ProbeReader::source).toList());
    double speed = before.get(0).source().speed();
    if (probe.source().speed() != speed) {
      table.mistake(
          "source",
          "runs at speed "
              + Shown.plain(probe.source().speed())
              + ", the first probe at "
              + Shown.plain(speed)
              + "; one kiln has one time, give all the same speed");
    }
  }

  private void probeIsMissing() {
    if (!root.has("probe")) {
      mistakes.add(0, "no [[probe]]; name the one that measures, see config/climbwatch.toml");
    }
  }

  private static SignalSettings signal(Section climb) {
    SignalSettings usual = SignalSettings.DEFAULT;
    double window = climb.number("window_s", usual.climbWindowSeconds(), 30, 1800);
    double quick = climb.number("fall_window_s", usual.fallWindowSeconds(), 10, 300);
    double spike = climb.number("spike_c", usual.spikeC(), 2, 200);
    if (quick > window) {
      climb.wrong(
          climb.has("fall_window_s") ? "fall_window_s" : "window_s",
          climb.has("fall_window_s") ? quick : window,
          climb.has("fall_window_s")
              ? "is longer than climb.window_s = " + Shown.plain(window)
              : "is shorter than climb.fall_window_s = " + Shown.plain(quick),
          "the quick look for a lost flame must be the shorter one");
    }
    climb.refuseTheRest();
    return new SignalSettings(window, quick, spike);
  }

  private Plan plan() {
    List<Plan.Segment> segments = new ArrayList<>();
    for (Section segment : root.sections("plan")) {
      double rate = segment.number("rate_c_per_h", 100, 1, 5000);
      OptionalDouble toC = segment.optionalNumber("to_c", 20, 1400);
      double hold = segment.number("hold_min", 0, 0, 2880);
      if (!segment.has("to_c")) {
        segment.mistake("to_c", "is missing; say where the ramp leads, for example to_c = 600");
      }
      segment.refuseTheRest();
      segments.add(new Plan.Segment(rate, toC.orElse(Plan.FROM_C), hold));
    }
    return new Plan(segments);
  }

  private static FiringSettings firing(Section firing, Plan plan) {
    FiringSettings usual = FiringSettings.DEFAULT;
    FiringSettings settings =
        new FiringSettings(
            firing.flag("begins_by_itself", usual.beginsByItself()),
            firing.number("begin_rise_c", usual.beginRiseC(), 5, 200),
            firing.number("dry_below_c", usual.dryBelowC(), 0, 300),
            firing.number("cooling_drop_c", usual.coolingDropC(), 20, 500),
            firing.number("cooling_after_s", usual.coolingAfterSeconds(), 60, 14_400),
            firing.number("end_below_c", usual.endBelowC(), 20, 300),
            firing.optionalNumber("hold_min", 1, 2880),
            plan);
    firing.refuseTheRest();
    return settings;
  }

  /** The probe's table: what the core needs of it, and where its readings come from. */
  static final class ProbeReader {
    private final ProbeSettings settings;
    private final ProbeSource source;
    private final Optional<LocalDate> fitted;

    ProbeReader(Section probe) {
      ProbeTable table = new ProbeTable(probe);
      source = table.source();
      settings = table.settings();
      fitted = probe.date("fitted");
      probe.refuseTheRest();
    }

    ProbeSettings settings() {
      return settings;
    }

    ProbeSource source() {
      return source;
    }

    Optional<LocalDate> fitted() {
      return fitted;
    }
  }
}
