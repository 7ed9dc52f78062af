package org.climbwatch.source.simulated;

import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;

/** A sheathed Type K couple in the kiln, its lead, and the amplifier that it is wired to. */
final class SimulatedProbe {
  /** mV: a quarter degree of a MAX31855, 41.276 µV/°C (data sheet 19-5793). */
  private static final double AMPLIFIER_STEP_MV = 0.041276 * 0.25;

  private static final int FLUTTER = 11;
  private static final int HISS = 12;
  private static final int SPARK = 13;
  private static final int SPARK_SIZE = 14;
  private static final int LOOSE = 15;
  private static final int CONTACT = 16;

  /** Keeps the noises of probes in one kiln apart. */
  private static final long SEEDS_APART = 1_000_003;

  private static final int OPENED = 17;

  /** Share of the looks met by the sparks of an igniter out of order that give no number. */
  private static final double OPENED_SHARE = 0.4;

  /** Sparks that meet a tick of 0.1 s while the igniter clicks, and from other causes. */
  private static final double SPARKS_AT_IGNITION = 0.1;

  private static final double SPARKS_LATER = 1 / 20_000.0;

  /** A loose contact: ticks for which it stays as it is, how often it is bad, what is left then. */
  private static final long CONTACT_TICKS = 250;

  /** mV of the hum; and what 50 Hz moves on between looks 102 ms apart, whole waves left out. */
  private static final double HUM_MV = 0.3;

  private static final double HUM_WAVES = 0.1;

  private static final double CONTACT_BAD = 0.2;
  private static final double CONTACT_LEFT = 0.6;

  /** Green rot: share of the temperature lost in each hour, and the most that is lost. */
  private static final double ROT_PER_HOUR = 0.06;

  private static final double MOST_ROT = 0.15;

  private final long seed;
  private final Place place;
  private final double outsideC;
  private final SimulatedBox box;
  private double probeC;
  private double probeBeforeC;
  private double flutterC;
  private double rot;
  private Optional<Sent> frozen = Optional.empty();

  /** What the amplifier sends: mV between its terminals, and °C of them. */
  record Sent(double emfMv, double coldJunctionC) {}

  SimulatedProbe(SimulationSettings settings, double startC, double outsideC) {
    seed = settings.seed() + SEEDS_APART * settings.place().ordinal();
    place = settings.place();
    this.outsideC = outsideC;
    box = new SimulatedBox(settings.fault(), startC, outsideC);
    probeC = startC;
    probeBeforeC = startC;
  }

  /** Follows the firing after each of its steps. */
  void step(SimulatedFiring firing, long second) {
    double placeC = place.celsius(firing.model().chamberC(), outsideC, firing.flame());
    probeBeforeC = probeC;
    probeC += (placeC - probeC) / lagSeconds(probeC);
    box.step(firing, second);
    double spreadC = 0.05 + 0.35 * StrictMath.sqrt(firing.flame());
    // a flame's noise is not independent from one second to the next
    flutterC = 0.8 * flutterC + 0.6 * spreadC * Hash.normal(seed, FLUTTER, second);
    if (firing.faultNow() == FaultKind.DRIFT) {
      rot = Math.min(rot + ROT_PER_HOUR / 3600, MOST_ROT);
    }
    if (firing.faultNow() == FaultKind.STUCK) {
      frozen = frozen.or(() -> Optional.of(live(firing, 0, second * 10)));
    }
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
      case SHORT_TO_SUPPLY -> Optional.of(Fault.SHORT_TO_SUPPLY);
      case SILENCE -> Optional.of(Fault.NO_ANSWER);
      default -> Optional.empty();
    };
  }

  /**
   * What the amplifier sends.
   *
   * @param part of the way through the last step
   * @param tick tenths of a second since the model began, also while it stands still
   */
  Sent sent(SimulatedFiring firing, double part, long tick) {
    return firing.faultNow() == FaultKind.STUCK && frozen.isPresent()
        ? frozen.get()
        : live(firing, part, tick);
  }

  private Sent live(SimulatedFiring firing, double part, long tick) {
    double left = firing.faultNow() == FaultKind.DRIFT ? 1 - rot : 1;
    double seenC = Math.min(probeC(part) * left, 1355) + noiseC(firing, tick);
    double withinC = Math.min(Math.max(seenC, -100), 1370);
    double coldJunctionC = box.coldJunctionC();
    double emfMv = ColdJunction.emfMv(ThermocoupleType.K, withinC, coldJunctionC);
    double stepped =
        Math.rint(wired(firing.faultNow(), emfMv, tick) / AMPLIFIER_STEP_MV) * AMPLIFIER_STEP_MV;
    return new Sent(stepped, coldJunctionC);
  }

  /** What is left of the couple's voltage at the amplifier's terminals. */
  private double wired(FaultKind fault, double emfMv, long tick) {
    return switch (fault) {
      case REVERSED -> -emfMv;
      // the lead adds what it should take away, between its two ends
      case REVERSED_TWICE ->
          emfMv - 2 * ColdJunction.emfMv(ThermocoupleType.K, box.headC(), box.coldJunctionC());
      case HUM -> emfMv + HUM_MV * StrictMath.sin(2 * Math.PI * HUM_WAVES * tick);
      case JUMPS ->
          Hash.even(seed, CONTACT, Math.floorDiv(tick, CONTACT_TICKS)) < CONTACT_BAD
              ? CONTACT_LEFT * emfMv
              : emfMv;
      default -> emfMv;
    };
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
