package org.climbwatch.source.modbus;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.source.port.PortSettings;

/**
 * Which registers of which unit on which line make a reading, and how patient to be.
 *
 * @param unit 1 to 247
 * @param function 3 for holding registers, 4 for input registers; for all that is read
 * @param faultValues bare numbers (before the scale) in the value's place that mean a broken couple
 * @param pause from one look to the next, 0.1 to 60 s
 * @param timeout for one answer, 0.1 to 10 s
 * @param silence without an answer until the reading is a fault, 1 s to 10 min
 */
public record ModbusSettings(
    PortSettings line,
    int unit,
    int function,
    Register value,
    Meaning meaning,
    ColdJunctionFrom coldJunction,
    List<Double> faultValues,
    Optional<Status> status,
    Duration pause,
    Duration timeout,
    Duration silence) {
  public static final int HOLDING_REGISTERS = 3;
  public static final int INPUT_REGISTERS = 4;
  public static final Duration DEFAULT_PAUSE = Duration.ofMillis(500);
  public static final Duration DEFAULT_TIMEOUT = Duration.ofSeconds(1);
  public static final Duration DEFAULT_SILENCE = Duration.ofSeconds(10);

  private static final int MOST_UNIT = 247;

  /** What the scaled number is. */
  public enum Meaning {
    /** °C, linearised by the transmitter. */
    TEMPERATURE_C,
    /** mV between the terminals. */
    EMF_MV
  }

  /**
   * Where the temperature of the terminals comes from.
   *
   * @param register of the same unit, scaled to °C
   * @param fixedC °C, where it is kept or known otherwise
   */
  public record ColdJunctionFrom(Optional<Register> register, OptionalDouble fixedC) {
    /** Not told; fit for a temperature, which the transmitter has compensated itself. */
    public static final ColdJunctionFrom NOWHERE =
        new ColdJunctionFrom(Optional.empty(), OptionalDouble.empty());
  }

  /**
   * A register whose bits tell how the transmitter is.
   *
   * @param openCircuitBits any of these set means a broken couple, 1 to 65535
   */
  public record Status(int address, int openCircuitBits) {}

  public ModbusSettings {
    if (unit < 1 || unit > MOST_UNIT) {
      throw new IllegalArgumentException("unit must be 1 to 247, was " + unit);
    }
    if (function != HOLDING_REGISTERS && function != INPUT_REGISTERS) {
      throw new IllegalArgumentException("function must be 3 or 4, was " + function);
    }
    boolean nowhere = coldJunction.equals(ColdJunctionFrom.NOWHERE);
    if (meaning == Meaning.EMF_MV && nowhere) {
      throw new IllegalArgumentException("an emf needs its cold junction: a register or fixed");
    }
    faultValues = List.copyOf(faultValues);
  }

  /** Which device, for people. */
  String describe() {
    return "Modbus unit " + unit + " on " + line.describe();
  }
}
