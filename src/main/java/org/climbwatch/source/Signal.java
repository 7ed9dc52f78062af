package org.climbwatch.source;

import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/**
 * What a device said in one line or answer, before it is known for which moment and probe it
 * counts.
 */
public sealed interface Signal {
  /** This signal as the reading of a probe. */
  Reading reading(Moment at, String probe);

  /** mV that an amplifier may give either way; no letter type gives more than 77 mV. */
  double MOST_EMF_MV = 100;

  /** °C; what silicon sensors in such amplifiers are made for. */
  double LEAST_COLD_JUNCTION_C = -55;

  double MOST_COLD_JUNCTION_C = 125;

  /** °C; from the lowest of any letter type (K, N, T, E) to the highest (B), ITS-90. */
  double LEAST_TEMPERATURE_C = -270;

  double MOST_TEMPERATURE_C = 1820;

  /** An emf, or a fault when no amplifier gives such numbers. */
  static Signal emf(double emfMv, double coldJunctionC) {
    boolean possible =
        Math.abs(emfMv) <= MOST_EMF_MV
            && coldJunctionC >= LEAST_COLD_JUNCTION_C
            && coldJunctionC <= MOST_COLD_JUNCTION_C;
    return possible ? new Emf(emfMv, coldJunctionC) : new Faulty(Fault.OUT_OF_RANGE);
  }

  /** A temperature, or a fault when no thermocouple has such. */
  static Signal linearised(double temperatureC, OptionalDouble coldJunctionC) {
    double coldC = coldJunctionC.orElse(0);
    boolean possible =
        temperatureC >= LEAST_TEMPERATURE_C
            && temperatureC <= MOST_TEMPERATURE_C
            && coldC >= LEAST_COLD_JUNCTION_C
            && coldC <= MOST_COLD_JUNCTION_C;
    return possible ? new Linearised(temperatureC, coldJunctionC) : new Faulty(Fault.OUT_OF_RANGE);
  }

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
