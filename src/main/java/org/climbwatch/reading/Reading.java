package org.climbwatch.reading;

import java.util.OptionalDouble;

/**
 * What one probe's instrument said, before linearisation, or the fault instead: one look, or the
 * middle of several.
 *
 * <p>A reading of several looks carries their number and their spread: the median absolute
 * deviation from the middle, times 1.4826, which is the standard deviation where the noise is
 * normal. It is that of one look, not of the middle. A single look has the spread 0, which then
 * means nothing.
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
   * @param samples how many looks it was made of, 1 or more
   * @param spreadMv mV, of the emf of those looks; 0 or more
   */
  record Emf(
      Moment at, String probe, double emfMv, double coldJunctionC, int samples, double spreadMv)
      implements Reading {
    public Emf {
      requireFinite(emfMv, "emfMv");
      requireFinite(coldJunctionC, "coldJunctionC");
      requireSpread(samples, spreadMv, "spreadMv");
    }
  }

  /**
   * A temperature that the instrument has linearised itself.
   *
   * @param temperatureC °C
   * @param coldJunctionC °C, where the instrument tells
   * @param samples how many looks it was made of, 1 or more
   * @param spreadC °C, of the temperatures of those looks; 0 or more
   */
  record Linearised(
      Moment at,
      String probe,
      double temperatureC,
      OptionalDouble coldJunctionC,
      int samples,
      double spreadC)
      implements Reading {
    public Linearised {
      requireFinite(temperatureC, "temperatureC");
      if (coldJunctionC.isPresent()) {
        requireFinite(coldJunctionC.getAsDouble(), "coldJunctionC");
      }
      requireSpread(samples, spreadC, "spreadC");
    }
  }

  /** No temperature, and why. */
  record Faulty(Moment at, String probe, Fault fault) implements Reading {}

  /** A single look's signal on the grid of the record: emf to 0.1 µV, cold junction to 0.001 °C. */
  static Reading emf(Moment at, String probe, double emfMv, double coldJunctionC) {
    return emf(at, probe, emfMv, coldJunctionC, 1, 0);
  }

  /** A signal made of several looks, on the grid of the record; the spread to 0.1 µV. */
  static Reading emf(
      Moment at, String probe, double emfMv, double coldJunctionC, int samples, double spreadMv) {
    return new Emf(
        at, probe, onGrid(emfMv, 1e4), onGrid(coldJunctionC, 1e3), samples, onGrid(spreadMv, 1e4));
  }

  /** A single look's temperature by the instrument, on the grid of the record: 0.001 °C. */
  static Reading linearised(
      Moment at, String probe, double temperatureC, OptionalDouble coldJunctionC) {
    return linearised(at, probe, temperatureC, coldJunctionC, 1, 0);
  }

  /**
   * An instrument's temperature made of several looks, on the grid of the record; so the spread.
   */
  static Reading linearised(
      Moment at,
      String probe,
      double temperatureC,
      OptionalDouble coldJunctionC,
      int samples,
      double spreadC) {
    OptionalDouble cold =
        coldJunctionC.isPresent()
            ? OptionalDouble.of(onGrid(coldJunctionC.getAsDouble(), 1e3))
            : coldJunctionC;
    return new Linearised(
        at, probe, onGrid(temperatureC, 1e3), cold, samples, onGrid(spreadC, 1e3));
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

  private static void requireSpread(int samples, double spread, String name) {
    if (samples < 1) {
      throw new IllegalArgumentException("samples must be 1 or more, was " + samples);
    }
    requireFinite(spread, name);
    if (spread < 0 || (samples == 1 && spread > 0)) {
      throw new IllegalArgumentException(
          name + " of " + samples + " must be 0 or more, and 0 of one, was " + spread);
    }
  }

  private static void requireFinite(double value, String name) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(name + " must be finite, was " + value);
    }
  }
}
