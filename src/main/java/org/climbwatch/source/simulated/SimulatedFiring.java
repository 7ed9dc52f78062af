package org.climbwatch.source.simulated;

import java.util.Optional;
import java.util.SplittableRandom;
import org.climbwatch.reading.Fault;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * One firing of the model, second by second: gas, heat, and what a probe makes of it.
 *
 * <p>Goes forward in steps of a second from its own beginning, so what it gives depends on seed and
 * time alone and not on how often it is asked.
 */
final class SimulatedFiring {
  /** mV: a quarter degree of a MAX31855, 41.276 µV/°C (data sheet 19-5793). */
  private static final double AMPLIFIER_STEP_MV = 0.041276 * 0.25;

  private static final double COLD_JUNCTION_STEP_C = 0.0625;
  private static final double SPARKS_PER_SECOND_WHILE_LIT = 1 / 4000.0;

  private final SimulationSettings settings;
  private final FiringKind firing;
  private final KilnModel model;
  private final SplittableRandom dice;
  private final double faultAtSecond;
  private long second;
  private double probeC;
  private double flutterC;
  private double jumpC;

  SimulatedFiring(SimulationSettings settings) {
    this.settings = settings;
    firing = settings.firing();
    model = new KilnModel(firing.kiln(), firing.startC());
    dice = new SplittableRandom(settings.seed());
    faultAtSecond = firing.gasOffMinute() * 60 * (0.45 + 0.3 * dice.nextDouble());
    probeC = firing.startC();
  }

  /** Goes on to a second; earlier ones are past. */
  void advanceTo(long toSecond) {
    while (second < toSecond) {
      second++;
      step();
    }
  }

  long second() {
    return second;
  }

  /** °C that the junction of the probe has. */
  double probeC() {
    return probeC;
  }

  double chamberC() {
    return model.chamberC();
  }

  /** Why the probe gives nothing, if so. */
  Optional<Fault> fault() {
    if (!faulty()) {
      return Optional.empty();
    }
    return switch (settings.fault()) {
      case OPEN_CIRCUIT -> Optional.of(Fault.OPEN_CIRCUIT);
      case SHORT_TO_GROUND -> Optional.of(Fault.SHORT_TO_GROUND);
      case SILENCE -> Optional.of(Fault.NO_ANSWER);
      case NONE, STALL, BURNER_OUT, RUNAWAY, PROBE_NOISE, REVERSED -> Optional.empty();
    };
  }

  /** °C at the amplifier's terminals: it warms beside a hot kiln. */
  double coldJunctionC() {
    double warmed = 14 + 14 * (1 - StrictMath.exp(-second / 7200.0));
    return Math.rint(warmed / COLD_JUNCTION_STEP_C) * COLD_JUNCTION_STEP_C;
  }

  /** mV between the terminals, with noise and in the amplifier's steps. */
  double emfMv() {
    double seenC = Math.min(Math.max(probeC + flutterC + jumpC, -100), 1360);
    double emfMv = ColdJunction.emfMv(ThermocoupleType.K, seenC, coldJunctionC());
    double stepped = Math.rint(emfMv / AMPLIFIER_STEP_MV) * AMPLIFIER_STEP_MV;
    return settings.fault() == FaultKind.REVERSED ? -stepped : stepped;
  }

  private void step() {
    double minute = second / 60.0;
    double gas = firing.gas(minute) * firing.bottle(minute) * gasUnderFault();
    model.step(firing.kiln().burnerKw() * gas);
    probeC += (model.chamberC() - probeC) / probeLagSeconds(probeC);
    boolean lit = gas > 0;
    flutterC = 0.8 * flutterC + (lit ? 0.28 : 0.08) * gaussian();
    jumpC = lit && dice.nextDouble() < SPARKS_PER_SECOND_WHILE_LIT ? 60 * gaussian() : 0;
    if (faulty() && settings.fault() == FaultKind.PROBE_NOISE) {
      jumpC = 35 * gaussian();
    }
  }

  private double gasUnderFault() {
    if (!faulty()) {
      return 1;
    }
    double since = second - faultAtSecond;
    return switch (settings.fault()) {
      case STALL -> 1 - 0.45 * Math.min(since / 2400, 1);
      case BURNER_OUT -> 0;
      case RUNAWAY -> 2.5;
      case NONE, OPEN_CIRCUIT, SHORT_TO_GROUND, PROBE_NOISE, SILENCE, REVERSED -> 1;
    };
  }

  private boolean faulty() {
    return settings.fault() != FaultKind.NONE && second >= faultAtSecond;
  }

  /**
   * 63 % time of a 3 mm sheath: 36 s at 400 °C, 14 at 700, 7 at 1000, 4 at 1250, worked out from
   * rho c d / 4 h with radiation at 0.8 and 20 W/(m² K).
   */
  private static double probeLagSeconds(double celsius) {
    double kelvin = celsius + 273.15;
    double wattsPerM2K = 4 * 0.8 * 5.670374e-8 * kelvin * kelvin * kelvin + 20;
    return Math.max(3.6e6 * 0.003 / (4 * wattsPerM2K), 1);
  }

  /** Nearly normal: the sum of twelve even ones, which is the same on every machine. */
  private double gaussian() {
    double sum = -6;
    for (int i = 0; i < 12; i++) {
      sum += dice.nextDouble();
    }
    return sum;
  }
}
