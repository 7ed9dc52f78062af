package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.junit.jupiter.api.Test;

/** A couple of Type B, which a cold kiln leaves without a temperature. */
class TypeBTest {
  private static final ThermocoupleType B = ThermocoupleType.B;
  private final List<Event> events = new ArrayList<>();
  private final Watch watch =
      new Watch(
          new WatchSettings(
              "top hat",
              OptionalDouble.empty(),
              new ProbeSettings("upper", B, ToleranceClass.IEC_2, 2, 1),
              SignalSettings.DEFAULT,
              FiringSettings.DEFAULT,
              AlarmSettings.DEFAULT));

  private Optional<Fault> read(long second, double emfMv) {
    Outcome outcome =
        watch.accept(
            new Input.Measured(Reading.emf(new Moment(0, second * 1000), "upper", emfMv, 25)));
    events.addAll(outcome.events());
    return outcome.judged().orElseThrow().fault();
  }

  @Test
  void aColdKilnHasNoTemperatureAndNoAlarm() {
    for (long second = 0; second < 3600; second++) {
      double noiseMv = second % 7 * 0.0004 - 0.0012;

      assertThat(read(second, noiseMv - 0.0005)).contains(Fault.BELOW_RANGE);
    }

    assertThat(events).isEmpty();
  }

  /** Through 42 °C its temperatures come and go with the noise: no loose screw. */
  @Test
  void warmingUpIsAFiringAndNoFinding() {
    for (long second = 0; second < 7200; second++) {
      double trueC = 20 + second / 20.0;
      double noiseMv = second % 5 * 0.0002 - 0.0004;
      read(second, ColdJunction.emfMv(B, trueC, 25) + noiseMv);
    }

    assertThat(events).extracting(Event::event).doesNotContain("alarm");
    assertThat(events).extracting(Event::event).contains("firing");
  }

  /** At 1000 °C reversed wires give -4.8 mV. */
  @Test
  void reversedWiresAreNoColdKiln() {
    assertThat(read(0, -4.8)).contains(Fault.OUT_OF_RANGE);
  }

  /** NIST's function is flat at 21 °C: an uncertainty would be divided by a slope of nothing. */
  @Test
  void anInstrumentsOwnNumberBelow42IsNotBelievedEither() {
    assertThat(linearised(21.0).fault()).contains(Fault.BELOW_RANGE);
    assertThat(linearised(42.1).fault()).contains(Fault.BELOW_RANGE);
    assertThat(linearised(42.2).fault()).isEmpty();
    assertThat(linearised(42.2).uncertaintyC().orElseThrow()).isLessThan(10);
  }

  private Judged linearised(double celsius) {
    Reading reading =
        Reading.linearised(new Moment(0, 0), "upper", celsius, OptionalDouble.empty());
    return watch.accept(new Input.Measured(reading)).judged().orElseThrow();
  }
}
