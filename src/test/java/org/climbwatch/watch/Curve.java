package org.climbwatch.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;

/** A curve drawn by hand through a watch, a reading a second with a flame's small noise. */
final class Curve {
  private final Watch watch;
  private final List<Event> events = new ArrayList<>();
  private long second;
  private double celsius;
  private double noiseC = 0.3;

  Curve(double targetC) {
    this(OptionalDouble.of(targetC));
  }

  Curve() {
    this(OptionalDouble.empty());
  }

  private Curve(OptionalDouble targetC) {
    watch =
        new Watch(
            new WatchSettings(
                "top hat",
                targetC,
                new ProbeSettings("upper", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1),
                SignalSettings.DEFAULT,
                FiringSettings.DEFAULT,
                AlarmSettings.DEFAULT));
  }

  /** The potter begins at a temperature. */
  Curve begin(double fromC) {
    celsius = fromC;
    return take(new Input.Began(now(), "curve"));
  }

  /**
   * @param amplitudeC °C that readings scatter to either side from now on
   */
  Curve noisy(double amplitudeC) {
    noiseC = amplitudeC;
    return this;
  }

  Curve declare(Phase phase) {
    return take(new Input.Declared(now(), phase));
  }

  Curve end() {
    return take(new Input.Ended(now()));
  }

  Curve steady(double cPerHour, double minutes) {
    double fromC = celsius;
    return follow(minutes, t -> fromC + cPerHour * t / 3600);
  }

  /**
   * @param shape °C over seconds from here
   */
  Curve follow(double minutes, DoubleUnaryOperator shape) {
    for (int s = 1; s <= minutes * 60; s++) {
      celsius = shape.applyAsDouble(s);
      second++;
      double seenC = celsius + noiseC * StrictMath.sin(second * second % 9973 * 7.77);
      take(new Input.Measured(Reading.linearised(now(), "upper", seenC, OptionalDouble.of(25))));
    }
    return this;
  }

  Curve faulty(Fault fault, int seconds) {
    for (int s = 0; s < seconds; s++) {
      second++;
      take(new Input.Measured(Reading.faulty(now(), "upper", fault)));
    }
    return this;
  }

  double celsius() {
    return celsius;
  }

  View view() {
    return watch.view();
  }

  /** The raisings of a kind. */
  List<Event.AlarmChanged> raised(AlarmKind kind) {
    List<Event.AlarmChanged> raised = new ArrayList<>();
    for (Event event : events) {
      if (event instanceof Event.AlarmChanged changed
          && changed.kind() == kind
          && changed.alarmState() == AlarmState.UNACKNOWLEDGED) {
        raised.add(changed);
      }
    }
    return raised;
  }

  /** All kinds raised, in their order. */
  List<AlarmKind> raised() {
    return events.stream()
        .filter(Event.AlarmChanged.class::isInstance)
        .map(Event.AlarmChanged.class::cast)
        .filter(one -> one.alarmState() == AlarmState.UNACKNOWLEDGED)
        .map(Event.AlarmChanged::kind)
        .toList();
  }

  String messageOf(AlarmKind kind) {
    return raised(kind).get(0).message();
  }

  private Curve take(Input input) {
    events.addAll(watch.accept(input).events());
    return this;
  }

  private Moment now() {
    return new Moment(0, second * 1000);
  }
}
