package org.climbwatch.web;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;

/** A firing on which settings were tried, and how its alarms would differ. */
public record TriedFiring(FiringSummary firing, List<Alarm> alarms) {
  public TriedFiring {
    alarms = List.copyOf(alarms);
  }

  /**
   * One alarm, as it was and as it would be.
   *
   * @param probe empty for the followed one
   * @param wasS s since the firing's first reading; empty where it is new
   * @param wouldS the same under the settings that were tried; empty where it is gone
   * @param change {@code same}, {@code earlier}, {@code later}, {@code new} or {@code gone}
   * @param message as the settings that were tried say it, or as it was said where it is gone
   */
  public record Alarm(
      AlarmKind kind,
      Optional<String> probe,
      OptionalDouble wasS,
      OptionalDouble wouldS,
      String change,
      String message) {}
}
