package org.climbwatch.source.spi;

import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * What the sixteen registers of a {@link Max31856} say in one look, drawn there.
 *
 * @param chip as it was set up
 * @param bytes seventeen: what came in while the address went out, then registers 00 to 0F
 */
record Max31856Frame(Max31856 chip, byte[] bytes) {
  static final int BYTES = 17;

  private static final int COLD_JUNCTION = 0x0A;
  private static final int HOT_JUNCTION = 0x0C;
  private static final int SR = 0x0F;

  private static final int COLD_RANGE = 0x80;
  private static final int HOT_RANGE = 0x40;
  private static final int THRESHOLDS = 0x3C;
  private static final int OVER_OR_UNDER_VOLTAGE = 0x02;
  private static final int OPEN = 0x01;

  static final double HOT_STEP_C = 0.0078125;
  private static final double COLD_STEP_C = 0.015625;
  private static final int FULL_SCALE = 1 << 17;
  private static final double LEAST_COLD_JUNCTION_C = -55;
  private static final double MOST_COLD_JUNCTION_C = 125;

  /** Whether the chip has its settings as they were written. */
  boolean keepsSettings() {
    return holds(chip.settings(), chip.oneShot() ? Max31856.ONE_SHOT : 0);
  }

  /** Whether the chip is as after its power came on. */
  boolean isAsAfterPowerOn() {
    return holds(Max31856.POWER_ON, 0);
  }

  private boolean holds(byte[] settings, int ignoredOfControl) {
    boolean same = (register(0) & ~ignoredOfControl) == (settings[0] & 0xFF);
    for (int address = 1; address < settings.length; address++) {
      same &= register(address) == (settings[address] & 0xFF);
    }
    return same;
  }

  /** The reading, or why there is none; never an exception. */
  Reading reading(Moment at, String probe) {
    return fault()
        .map(fault -> Reading.faulty(at, probe, fault))
        .orElseGet(() -> Reading.emf(at, probe, emfMv(), coldJunctionC()));
  }

  private Optional<Fault> fault() {
    int status = register(SR);
    if (!keepsSettings()) {
      return Optional.of(Fault.WIRING);
    }
    if ((status & OVER_OR_UNDER_VOLTAGE) != 0) {
      return Optional.of(Fault.SHORT_TO_SUPPLY);
    }
    if ((status & OPEN) != 0) {
      return Optional.of(Fault.OPEN_CIRCUIT);
    }
    if ((register(0) & Max31856.ONE_SHOT) != 0) {
      // long enough after its beginning, the conversion has not come to its end
      return Optional.of(Fault.NO_ANSWER);
    }
    if (isBelowItsTable(status)) {
      return Optional.of(Fault.BELOW_RANGE);
    }
    if ((status & COLD_RANGE) != 0 || isBeyondItsScale(status)) {
      return Optional.of(Fault.OUT_OF_RANGE);
    }
    return isImpossible(status) ? Optional.of(Fault.WIRING) : Optional.empty();
  }

  /** Type B is clamped below 250 °C, where every firing begins. */
  private boolean isBelowItsTable(int status) {
    return chip.type() == ThermocoupleType.B
        && !isVoltage()
        && (status & (COLD_RANGE | HOT_RANGE | THRESHOLDS)) == HOT_RANGE
        && Math.abs(hotJunctionC() - leastC()) <= HOT_STEP_C;
  }

  private boolean isBeyondItsScale(int status) {
    boolean beyond =
        isVoltage() ? code() <= -FULL_SCALE || code() >= FULL_SCALE - 1 : (status & HOT_RANGE) != 0;
    // the chip's own limit for B is 0 °C, where its reference function begins
    return beyond || coldJunctionC() < chip.type().lowestC();
  }

  private boolean isImpossible(int status) {
    double coldJunctionC = coldJunctionC();
    return (status & THRESHOLDS) != 0
        || code() == 0 && coldJunctionC == 0
        || coldJunctionC < LEAST_COLD_JUNCTION_C
        || coldJunctionC > MOST_COLD_JUNCTION_C
        || !isVoltage() && (hotJunctionC() < leastC() || hotJunctionC() > mostC());
  }

  /** µV to a code in voltage mode: code = gain * 1.6 * 2^17 * V. */
  static double voltageStepUv(Max31856.Mode mode) {
    return 1e6 / (mode.gain() * 1.6 * FULL_SCALE);
  }

  private boolean isVoltage() {
    return chip.mode() != Max31856.Mode.TEMPERATURE;
  }

  private double emfMv() {
    return isVoltage()
        ? code() * voltageStepUv(chip.mode()) / 1000
        : ColdJunction.emfMv(chip.type(), hotJunctionC(), coldJunctionC());
  }

  /** °C of the chip: registers 0A and 0B, its offset already in it. */
  double coldJunctionC() {
    return ((short) (register(COLD_JUNCTION) << 8 | register(COLD_JUNCTION + 1)) >> 2)
        * COLD_STEP_C;
  }

  /** °C as the chip has linearised it: registers 0C to 0E. */
  double hotJunctionC() {
    return code() * HOT_STEP_C;
  }

  /** The signed 19 bits of registers 0C to 0E. */
  private int code() {
    int left =
        register(HOT_JUNCTION) << 24
            | register(HOT_JUNCTION + 1) << 16
            | register(HOT_JUNCTION + 2) << 8;
    return left >> 13;
  }

  private int register(int address) {
    return bytes[1 + address] & 0xFF;
  }

  /** °C at which the chip's table for a letter begins and clamps. */
  private double leastC() {
    return switch (chip.type()) {
      case B -> 250;
      case J -> -210;
      case R, S -> -50;
      case E, K, N, T -> -200;
    };
  }

  /** °C at which it ends and clamps. */
  private double mostC() {
    return switch (chip.type()) {
      case B -> 1820;
      case E -> 1000;
      case J -> 1200;
      case K -> 1372;
      case N -> 1300;
      case R, S -> 1768;
      case T -> 400;
    };
  }
}
