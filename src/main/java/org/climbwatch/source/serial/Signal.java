package org.climbwatch.source.serial;

import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/** What a device said in one line, before it is known for which moment and probe it counts. */
sealed interface Signal {
  /** This signal as the reading of a probe. */
  Reading reading(Moment at, String probe);

  /** A thermocouple's own signal, mV, and the temperature of the amplifier's terminals, °C. */
  record Emf(double emfMv, double coldJunctionC) implements Signal {
    @Override
    public Reading reading(Moment at, String probe) {
      return Reading.emf(at, probe, emfMv, coldJunctionC);
    }
  }

  /** A temperature, °C, that the device has linearised itself. */
  record Linearised(double temperatureC, OptionalDouble coldJunctionC) implements Signal {
    @Override
    public Reading reading(Moment at, String probe) {
      return Reading.linearised(at, probe, temperatureC, coldJunctionC);
    }
  }

  /** No temperature, and why. */
  record Faulty(Fault fault) implements Signal {
    @Override
    public Reading reading(Moment at, String probe) {
      return Reading.faulty(at, probe, fault);
    }
  }
}
