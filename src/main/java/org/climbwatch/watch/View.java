package org.climbwatch.watch;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;

/**
 * What is true now, for the page and the API.
 *
 * @param targetC °C that the firing is meant to reach
 * @param probes all of them, the followed one first
 * @param firing the one that is on
 * @param alarms all that are not normal, the oldest first
 */
public record View(
    String kiln,
    Phase phase,
    OptionalDouble targetC,
    List<ProbeView> probes,
    Optional<OpenFiring> firing,
    List<StandingAlarm> alarms) {

  /** The newest reading of the followed probe, kept or not. */
  public Optional<Judged> latest() {
    return probes.get(0).latest();
  }

  /**
   * One probe.
   *
   * @param name as configured
   * @param latest its newest reading, kept or not
   */
  public record ProbeView(String name, Optional<Judged> latest) {}

  /**
   * The firing that is on.
   *
   * @param gasOffSaid whether the potter has said that the gas is off
   */
  public record OpenFiring(Moment since, String name, boolean byItself, boolean gasOffSaid) {}

  /**
   * One occurrence of an alarm that still wants attention.
   *
   * @param probe the one whose readings raised it
   */
  public record StandingAlarm(
      String id, String probe, AlarmKind kind, AlarmState state, Moment since, String message) {}
}
