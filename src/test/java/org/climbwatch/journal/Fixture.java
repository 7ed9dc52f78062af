package org.climbwatch.journal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.WatchSettings;

/** Inputs and events of a small community pottery's top-hat kiln. */
final class Fixture {
  /** Half past four on 3 May 2026, UTC: when boot 0 began, by the wall clock. */
  static final long WALL_MS = 1_777_825_800_000L;

  static final String PROBE = "crown";

  /** Keeps the kiln's name only; all else is the same in these tests. */
  static final SettingsCodec CODEC =
      new SettingsCodec() {
        @Override
        public String encode(WatchSettings settings) {
          return "kiln " + settings.kiln();
        }

        @Override
        public WatchSettings decode(String text) {
          if (!text.startsWith("kiln ")) {
            throw new IllegalArgumentException("no settings: " + text);
          }
          return settings(text.substring(5));
        }
      };

  private Fixture() {}

  static WatchSettings settings(String kiln) {
    return new WatchSettings(
        kiln,
        OptionalDouble.of(1250),
        new ProbeSettings(PROBE, ThermocoupleType.K, ToleranceClass.IEC_1, 1, 1),
        SignalSettings.DEFAULT,
        FiringSettings.DEFAULT,
        AlarmSettings.DEFAULT);
  }

  static Moment at(int boot, long ms) {
    return new Moment(boot, ms);
  }

  static Judged good(Moment at, double temperatureC) {
    return good(at, temperatureC, Phase.CLIMBING);
  }

  static Judged good(Moment at, double temperatureC, Phase phase) {
    return new Judged(
        Reading.emf(at, PROBE, temperatureC / 25, 24.5),
        OptionalDouble.of(temperatureC),
        OptionalDouble.of(3.25),
        Optional.empty(),
        false,
        Optional.of(new Climb(148.5, 4.2)),
        phase);
  }

  static Judged spike(Moment at, double temperatureC) {
    Judged good = good(at, temperatureC);
    return new Judged(
        good.reading(),
        good.temperatureC(),
        good.uncertaintyC(),
        good.fault(),
        true,
        good.climb(),
        good.phase());
  }

  static Judged faulty(Moment at, Fault fault) {
    return judged(Reading.faulty(at, PROBE, fault));
  }

  /** A reading of any kind, with what a core might make of it. */
  static Judged judged(Reading reading) {
    if (reading instanceof Reading.Faulty faulty) {
      return new Judged(
          reading,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.of(faulty.fault()),
          false,
          Optional.empty(),
          Phase.CLIMBING);
    }
    return new Judged(
        reading,
        OptionalDouble.of(812.3),
        OptionalDouble.of(3.3),
        Optional.empty(),
        false,
        Optional.empty(),
        Phase.CLIMBING);
  }

  static List<Event> began(Moment at, Moment since, String name) {
    return List.of(
        new Event.FiringBegan(at, since, name, PROBE, !since.equals(at), "A firing began."),
        new Event.PhaseChanged(at, Phase.DRYING, "Drying."));
  }

  static List<Event> ended(Moment at, String name) {
    return List.of(
        new Event.FiringEnded(at, name, false, "The firing ended."),
        new Event.PhaseChanged(at, Phase.IDLE, "Idle."));
  }

  static List<Event> alarm(Moment at, String id, AlarmState state) {
    return List.of(
        new Event.AlarmChanged(at, id, PROBE, AlarmKind.CLIMB_STALLED, state, "Stalled."));
  }

  /** Begins a firing by the potter's word. */
  static void begin(Journal journal, Moment at, String name) {
    journal.record(new Input.Began(at, name), began(at, at, name));
  }

  static void end(Journal journal, Moment at, String name) {
    journal.record(new Input.Ended(at), ended(at, name));
  }
}
