package org.climbwatch.source.simulated;

import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;

/** A sheathed Type K couple in the chamber, and the amplifier that it is wired to. */
final class SimulatedProbe {
  /** mV: a quarter degree of a MAX31855, 41.276 µV/°C (data sheet 19-5793). */
  private static final double AMPLIFIER_STEP_MV = 0.041276 * 0.25;

  private static final double COLD_JUNCTION_STEP_C = 0.0625;

  /** The kiln warms the box beside it: °C for each °C of the chamber, and s to follow. */
  private static final double BOX_SHARE = 0.012;

  private static final double BOX_LAG_S = 5400;

  private static final int FLUTTER = 11;
  private static final int HISS = 12;
  private static final int SPARK = 13;
  private static final int SPARK_SIZE = 14;
  private static final int LOOSE = 15;

  private static final int OPENED = 16;

  /** Share of the looks met by the sparks of an igniter out of order that give no number. */
  private static final double OPENED_SHARE = 0.4;

  /** Sparks that meet a tick of 0.1 s while the igniter clicks, and from other causes. */
  private static final double SPARKS_AT_IGNITION = 0.1;

  private static final double SPARKS_LATER = 1 / 20_000.0;

  private final long seed;
  private final double outsideC;
  private double probeC;
  private double probeBeforeC;
  private double boxC;
  private double flutterC;

  SimulatedProbe(long seed, double startC, double outsideC) {
    this.seed = seed;
    this.outsideC = outsideC;
    probeC = startC;
    probeBeforeC = startC;
    boxC = outsideC + BOX_SHARE * startC;
  }

  /** Follows the firing after each of its steps. */
  void step(SimulatedFiring firing, long tickOfSecond) {
    double chamberC = firing.model().chamberC();
    probeBeforeC = probeC;
    probeC += (chamberC - probeC) / lagSeconds(probeC);
    boxC += (outsideC + BOX_SHARE * chamberC - boxC) / BOX_LAG_S;
    double spreadC = 0.05 + 0.35 * StrictMath.sqrt(firing.flame());
    // a flame's noise is not independent from one second to the next
    flutterC = 0.8 * flutterC + 0.6 * spreadC * Hash.normal(seed, FLUTTER, tickOfSecond);
  }

  /** °C of the junction part of the way through the last step, without noise. */
  double probeC(double part) {
    return probeBeforeC + part * (probeC - probeBeforeC);
  }

  /** Why the amplifier gives nothing, if so. */
  static Optional<Fault> fault(FaultKind kind) {
    return switch (kind) {
      case OPEN_CIRCUIT -> Optional.of(Fault.OPEN_CIRCUIT);
      case SHORT_TO_GROUND -> Optional.of(Fault.SHORT_TO_GROUND);
      case SILENCE -> Optional.of(Fault.NO_ANSWER);
      case NONE, STALL, BURNER_OUT, RUNAWAY, PROBE_NOISE, SPARKS, REVERSED -> Optional.empty();
    };
  }

  /** °C at the terminals, in the amplifier's steps. */
  double coldJunctionC() {
    return Math.rint(boxC / COLD_JUNCTION_STEP_C) * COLD_JUNCTION_STEP_C;
  }

  /**
   * mV between the terminals, with noise and in the amplifier's steps.
   *
   * @param part of the way through the last step
   * @param tick tenths of a second since the model began
   */
  double emfMv(SimulatedFiring firing, double part, long tick) {
    double seenC = probeC(part) + noiseC(firing, tick);
    double withinC = Math.min(Math.max(seenC, -100), 1370);
    double emfMv = ColdJunction.emfMv(ThermocoupleType.K, withinC, coldJunctionC());
    double stepped = Math.rint(emfMv / AMPLIFIER_STEP_MV) * AMPLIFIER_STEP_MV;
    return firing.faultNow() == FaultKind.REVERSED ? -stepped : stepped;
  }

  private double noiseC(SimulatedFiring firing, long tick) {
    double hissC = 0.1 * Hash.normal(seed, HISS, tick);
    double looseC =
        firing.faultNow() == FaultKind.PROBE_NOISE ? 35 * Hash.normal(seed, LOOSE, tick) : 0;
    double sparkC = spark(firing, tick) ? 60 * Hash.normal(seed, SPARK_SIZE, tick) : 0;
    return flutterC + hissC + looseC + sparkC;
  }

  private boolean spark(SimulatedFiring firing, long tick) {
    boolean clicks = firing.igniting() || firing.faultNow() == FaultKind.SPARKS;
    double sparks = clicks ? SPARKS_AT_IGNITION : SPARKS_LATER;
    return firing.flame() > 0 && Hash.even(seed, SPARK, tick) < sparks;
  }

  /** Whether a spark meets the conversion so that the amplifier calls the circuit open. */
  boolean opened(SimulatedFiring firing, long tick) {
    return firing.faultNow() == FaultKind.SPARKS
        && spark(firing, tick)
        && Hash.even(seed, OPENED, tick) < OPENED_SHARE;
  }

  /**
   * 63 % time of a 3 mm sheath: 36 s at 400 °C, 14 at 700, 7 at 1000, 4 at 1250, worked out from
   * rho c d / 4 h with radiation at 0.8 and 20 W/(m² K).
   */
  static double lagSeconds(double celsius) {
    double kelvin = celsius + 273.15;
    double wattsPerM2K = 4 * 0.8 * 5.670374e-8 * kelvin * kelvin * kelvin + 20;
    return Math.max(3.6e6 * 0.003 / (4 * wattsPerM2K), 1);
  }
}
