package org.climbwatch.watch;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;
import org.climbwatch.thermocouple.Budget;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.OutOfRange;
import org.climbwatch.thermocouple.Uncertainty;

/** Makes a temperature with its uncertainty of a raw reading, or finds the fault in it. */
final class Judge {
  private final ProbeSettings probe;

  Judge(ProbeSettings probe) {
    this.probe = probe;
  }

  /** What a reading says before anything is known of its neighbours. */
  Judged judge(Reading reading, Phase phase) {
    if (reading instanceof Reading.Faulty faulty) {
      return faulty(reading, faulty.fault(), phase);
    }
    try {
      return reading instanceof Reading.Emf emf
          ? good(reading, hotJunctionC(emf), emf.coldJunctionC(), phase)
          : linearised((Reading.Linearised) reading, phase);
    } catch (OutOfRange outside) {
      Fault fault = outside.tooColdToTell() ? Fault.BELOW_RANGE : Fault.OUT_OF_RANGE;
      return faulty(reading, fault, phase);
    }
  }

  /** The uncertainty of a reading, itemised; empty for one without a temperature. */
  Optional<Budget> budget(Reading reading) {
    if (judge(reading, Phase.IDLE).temperatureC().isEmpty()) {
      return Optional.empty();
    }
    boolean isEmf = reading instanceof Reading.Emf;
    double readC =
        isEmf ? hotJunctionC((Reading.Emf) reading) : ((Reading.Linearised) reading).temperatureC();
    double coldJunctionC =
        isEmf
            ? ((Reading.Emf) reading).coldJunctionC()
            : coldJunctionC((Reading.Linearised) reading);
    double spreadC = spreadC(reading, readC).orElse(0);
    return Optional.of(Budget.of(probe.chain(), readC, coldJunctionC, spreadC, samples(reading)));
  }

  private static double coldJunctionC(Reading.Linearised reading) {
    return reading.coldJunctionC().orElse(25);
  }

  /** The same with what the run of readings says of it. */
  static Judged with(Judged judged, boolean spike, Optional<Climb> climb, Phase phase) {
    return new Judged(
        judged.reading(),
        judged.temperatureC(),
        judged.uncertaintyC(),
        judged.fault(),
        spike,
        climb,
        phase,
        judged.spreadC());
  }

  private double hotJunctionC(Reading.Emf emf) {
    return ColdJunction.hotJunctionC(probe.type(), emf.emfMv(), emf.coldJunctionC());
  }

  private Judged linearised(Reading.Linearised reading, Phase phase) {
    // refuses a temperature that the couple cannot have
    probe.type().emfMv(reading.temperatureC());
    if (reading.temperatureC() < probe.type().lowestInverseC()) {
      // Type B has no slope there and two temperatures to an emf: the instrument guesses, too
      return faulty(reading, Fault.BELOW_RANGE, phase);
    }
    return good(reading, reading.temperatureC(), coldJunctionC(reading), phase);
  }

  /** The calibration's correction is added here and nowhere else: what was read stays as read. */
  private Judged good(Reading reading, double readC, double coldJunctionC, Phase phase) {
    OptionalDouble spreadC = spreadC(reading, readC);
    double uncertaintyC =
        Uncertainty.expandedC(
            probe.chain(), readC, coldJunctionC, spreadC.orElse(0), samples(reading));
    return new Judged(
        reading,
        OptionalDouble.of(readC + probe.chain().correction().addC(readC)),
        OptionalDouble.of(uncertaintyC),
        Optional.empty(),
        false,
        Optional.empty(),
        phase,
        spreadC);
  }

  private static int samples(Reading reading) {
    if (reading instanceof Reading.Emf emf) {
      return emf.samples();
    }
    return reading instanceof Reading.Linearised linearised ? linearised.samples() : 1;
  }

  /** The spread of the looks, a signal's through the couple's slope at that temperature. */
  private OptionalDouble spreadC(Reading reading, double temperatureC) {
    if (reading instanceof Reading.Emf emf && emf.samples() > 1) {
      double uvPerC = probe.type().seebeckUvPerC(temperatureC);
      // Type B has no slope to speak of near 21 °C, and a negative one below
      return uvPerC > 0
          ? OptionalDouble.of(emf.spreadMv() * 1000 / uvPerC)
          : OptionalDouble.empty();
    }
    return reading instanceof Reading.Linearised linearised && linearised.samples() > 1
        ? OptionalDouble.of(linearised.spreadC())
        : OptionalDouble.empty();
  }

  private static Judged faulty(Reading reading, Fault fault, Phase phase) {
    return new Judged(
        reading,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.of(fault),
        false,
        Optional.empty(),
        phase);
  }
}
