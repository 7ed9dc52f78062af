package org.climbwatch.watch;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Annunciator;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Forecast;

/**
 * What is true now, for the page and the API.
 *
 * @param targetC °C that the firing is meant to reach
 * @param probes all of them, the followed one first
 * @param firing the one that is on
 * @param forecast where it is heading
 * @param alarms all that are not normal, the oldest first
 * @param watched where the alarm of each rule and probe stands
 * @param alarmFlood whether alarms come faster than a person can answer them
 */
public record View(
    String kiln,
    Phase phase,
    OptionalDouble targetC,
    List<ProbeView> probes,
    Optional<OpenFiring> firing,
    Forecast forecast,
    List<StandingAlarm> alarms,
    List<WatchedAlarm> watched,
    boolean alarmFlood) {

  /** A view in which every alarm that does not stand is in service and normal. */
  public View(
      String kiln,
      Phase phase,
      OptionalDouble targetC,
      List<ProbeView> probes,
      Optional<OpenFiring> firing,
      Forecast forecast,
      List<StandingAlarm> alarms) {
    this(kiln, phase, targetC, probes, firing, forecast, alarms, List.of(), false);
  }

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
   * @param seenAt when what the message tells was seen
   * @param shelvedUntil while it is shelved
   * @param by who has answered or shelved it
   * @param cameFirst whether others followed on it within minutes
   */
  public record StandingAlarm(
      String id,
      String probe,
      AlarmKind kind,
      AlarmState state,
      Moment since,
      String message,
      Moment seenAt,
      Optional<Moment> shelvedUntil,
      Signature by,
      boolean cameFirst) {
    static StandingAlarm of(Annunciator.Standing one) {
      return new StandingAlarm(
          one.id(),
          one.probe(),
          one.kind(),
          one.state(),
          one.since(),
          one.message(),
          one.seenAt(),
          one.shelvedUntil(),
          one.by(),
          one.cameFirst());
    }

    /** One that nobody has answered or shelved. */
    public StandingAlarm(
        String id, String probe, AlarmKind kind, AlarmState state, Moment since, String message) {
      this(
          id, probe, kind, state, since, message, since, Optional.empty(), Signature.NOBODY, false);
    }
  }

  /**
   * The alarm of one rule and probe, whether or not there is an occurrence.
   *
   * @param called its name for a deed: the kind's word, and the probe behind a dash where it is not
   *     the followed one
   */
  public record WatchedAlarm(String called, String probe, AlarmKind kind, AlarmState state) {}
}
