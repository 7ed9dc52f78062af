package org.climbwatch.reading;

import java.util.OptionalDouble;

/**
 * One look at one probe: what the instrument said, before linearisation, or the fault instead.
 *
 * <p>Numbers are kept on the grid of the record (0.1 µV, 0.001 °C), so that what the core has seen,
 * what the journal keeps and what a CSV says are the same bit for bit. Use the factories {@link
 * #emf} and {@link #linearised}, which round to it.
 */
public sealed interface Reading {
  /** When it was taken. */
  Moment at();

  /** The configured name of the probe. */
  String probe();

  /**
   * A thermocouple's own signal.
   *
   * @param emfMv mV between the amplifier's terminals: E(hot junction) - E(cold junction)
   * @param coldJunctionC °C of those terminals
   */
  record Emf(Moment at, String probe, double emfMv, double coldJunctionC) implements Reading {
    public Emf {
      requireFinite(emfMv, "emfMv");
      requireFinite(coldJunctionC, "coldJunctionC");
    }
  }

  /**
   * A temperature that the instrument has linearised itself.
   *
   * @param temperatureC °C
   * @param coldJunctionC °C, where the instrument tells
   */
  record Linearised(Moment at, String probe, double temperatureC, OptionalDouble coldJunctionC)
      implements Reading {
    public Linearised {
      requireFinite(temperatureC, "temperatureC");
      if (coldJunctionC.isPresent()) {
        requireFinite(coldJunctionC.getAsDouble(), "coldJunctionC");
      }
    }
  }

  /** No temperature, and why. */
  record Faulty(Moment at, String probe, Fault fault) implements Reading {}

  /** A signal on the grid of the record: emf to 0.1 µV, cold junction to 0.001 °C. */
  static Reading emf(Moment at, String probe, double emfMv, double coldJunctionC) {
    return new Emf(at, probe, onGrid(emfMv, 1e4), onGrid(coldJunctionC, 1e3));
  }

  /** An instrument's own temperature on the grid of the record: 0.001 °C. */
  static Reading linearised(
      Moment at, String probe, double temperatureC, OptionalDouble coldJunctionC) {
    OptionalDouble cold =
        coldJunctionC.isPresent()
            ? OptionalDouble.of(onGrid(coldJunctionC.getAsDouble(), 1e3))
            : coldJunctionC;
    return new Linearised(at, probe, onGrid(temperatureC, 1e3), cold);
  }

  /** No temperature, and why. */
  static Reading faulty(Moment at, String probe, Fault fault) {
    return new Faulty(at, probe, fault);
  }

  private static double onGrid(double value, double stepsPerUnit) {
    double steps = Math.rint(value * stepsPerUnit);
    // adding 0.0 turns -0.0 into 0.0, so that equal readings are equal bit for bit
    return steps / stepsPerUnit + 0.0;
  }

  private static void requireFinite(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be finite, was " + value);
    }
  }
}
