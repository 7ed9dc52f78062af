package org.climbwatch.watch;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;

/** A small kiln evening told second by second. */
public final class Script {
  public static final WatchSettings SETTINGS =
      new WatchSettings(
          "top hat",
          OptionalDouble.of(1260),
          new ProbeSettings("upper", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1),
          SignalSettings.DEFAULT,
          FiringSettings.DEFAULT,
          AlarmSettings.DEFAULT);

  private final List<Input> inputs = new ArrayList<>();
  private int boot;
  private long second;
  private double temperatureC;

  public Script(double startC) {
    temperatureC = startC;
  }

  /** Readings once a second at a steady rate. */
  public Script climb(double cPerHour, int seconds) {
    for (int s = 0; s < seconds; s++) {
      temperatureC += cPerHour / 3600;
      inputs.add(
          new Input.Measured(
              Reading.linearised(
                  now(), "upper", temperatureC + flickerC(), OptionalDouble.of(25))));
      second++;
    }
    return this;
  }

  /** From one reading to the next on another level, as a wire that slips makes it. */
  public Script leap(double byC) {
    temperatureC += byC;
    return this;
  }

  public Script faulty(Fault fault, int seconds) {
    for (int s = 0; s < seconds; s++) {
      inputs.add(new Input.Measured(Reading.faulty(now(), "upper", fault)));
      second++;
    }
    return this;
  }

  /** The program is away for a while and comes back after a reboot. */
  public Script reboot() {
    return reboot(Duration.ZERO);
  }

  /** The same, and the clocks tell how long it was away. */
  public Script reboot(Duration away) {
    boot++;
    second = 20;
    inputs.add(new Input.Resumed(now(), away));
    return this;
  }

  public Script deed(java.util.function.Function<Moment, Input> deed) {
    inputs.add(deed.apply(now()));
    return this;
  }

  public List<Input> inputs() {
    return List.copyOf(inputs);
  }

  /** All events of a fresh watch. */
  public List<Event> events() {
    return eventsOf(new Watch(SETTINGS), inputs);
  }

  public static List<Event> eventsOf(Watch watch, List<Input> inputs) {
    List<Event> events = new ArrayList<>();
    for (Input input : inputs) {
      events.addAll(watch.accept(input).events());
    }
    return events;
  }

  /** A live signal never stands still. */
  private double flickerC() {
    return second % 2 * 0.002;
  }

  private Moment now() {
    return new Moment(boot, second * 1000);
  }
}
