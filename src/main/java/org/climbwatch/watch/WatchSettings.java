package org.climbwatch.watch;

import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.signal.SignalSettings;

/**
 * All settings that the core's events depend on.
 *
 * @param kiln its name, for messages
 * @param targetC °C that a firing is meant to reach
 * @param probes at least one, each with a name of its own; the first is the one that the firing and
 *     its alarms follow
 */
public record WatchSettings(
    String kiln,
    OptionalDouble targetC,
    List<ProbeSettings> probes,
    SignalSettings signal,
    FiringSettings firing,
    AlarmSettings alarm) {
  public WatchSettings {
    probes = List.copyOf(probes);
    Set<String> names = new HashSet<>();
    for (ProbeSettings probe : probes) {
      if (!names.add(probe.name())) {
        throw new IllegalArgumentException("two probes are called \"" + probe.name() + "\"");
      }
    }
    if (probes.isEmpty()) {
      throw new IllegalArgumentException("at least one probe is needed");
    }
  }

  /** Settings of a kiln with one probe. */
  public WatchSettings(
      String kiln,
      OptionalDouble targetC,
      ProbeSettings probe,
      SignalSettings signal,
      FiringSettings firing,
      AlarmSettings alarm) {
    this(kiln, targetC, List.of(probe), signal, firing, alarm);
  }

  /** The same with other probes. */
  public WatchSettings with(List<ProbeSettings> others) {
    return new WatchSettings(kiln, targetC, others, signal, firing, alarm);
  }

  /** The same of another kiln or of its past, with the probes that it had. */
  public WatchSettings with(String otherKiln, List<ProbeSettings> others) {
    return new WatchSettings(otherKiln, targetC, others, signal, firing, alarm);
  }

  /** The same with other alarms. */
  public WatchSettings with(AlarmSettings others) {
    return new WatchSettings(kiln, targetC, probes, signal, firing, others);
  }

  /** The probe that the firing and its alarms follow. */
  public ProbeSettings probe() {
    return probes.get(0);
  }

  /** The names of all probes, the followed one first. */
  public List<String> probeNames() {
    return probes.stream().map(ProbeSettings::name).toList();
  }
}
