package org.climbwatch.source.spi;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * A MAX6675: a straight line for Type K, 0 to 1023.75 °C, read only. SPI mode 0, clock 4.3 MHz at
 * most.
 *
 * <pre>
 *  bit  15  14                   3   2   1   0
 *      +---+----------------------+---+---+---+
 *      | 0 | temperature          |OC | 0 | z |
 *      |   | unsigned, 0.25 °C    |   |   |   |
 *      +---+----------------------+---+---+---+
 *  byte 0: 15..8    byte 1: 7..0
 *
 *  OC = open circuit (T- must be grounded for it); 1 = device id, always 0; z = driven by nobody
 * </pre>
 *
 * <p>The chip shows emf / 41 µV/°C + its own temperature, and does not tell the latter. So the line
 * is undone with an <em>assumed</em> cold junction, and the reading is a temperature that carries
 * neither an emf nor a cold junction, for neither was measured. The assumption costs little, since
 * what it adds in emf it takes away again in degrees: at most {@link #ASSUMPTION_ERROR_C} with the
 * board at 0 to 60 °C. What costs more is the chip's own compensation, &plusmn;3 °C.
 *
 * <p>A look stops the running conversion and begins the next, so looks closer than a conversion
 * freeze the number: {@link #rest} keeps them apart.
 *
 * <p>D15 or D1 set is what no chip sends; all zeros is what a bus without one gives, and what
 * reversed wires give, for the chip knows nothing below 0 °C: {@link Fault#WIRING}. The highest
 * code may stand for anything above: {@link Fault#OUT_OF_RANGE}.
 *
 * @param assumedColdJunctionC °C of the board while firing, -20 to 85
 * @see "Maxim MAX6675 data sheet, 19-2235 Rev 3"
 */
public record Max6675(double assumedColdJunctionC) implements Chip {
  public static final double DEFAULT_COLD_JUNCTION_C = 25;

  /** Operating range of the chip. */
  public static final double LEAST_COLD_JUNCTION_C = -20;

  public static final double MOST_COLD_JUNCTION_C = 85;

  /**
   * °C at the cold end by which 41 µV/°C and the reference function of Type K differ between an
   * assumed 25 °C and a true 0 to 60 °C: 0.025 mV at 0 °C, the worst of them.
   */
  static final double ASSUMPTION_ERROR_C = 0.7;

  static final int FRAME_BYTES = 2;

  private static final double SLOPE_UV_PER_C = 41;
  private static final double STEP_C = 0.25;
  private static final double STEP_UV = STEP_C * SLOPE_UV_PER_C;
  private static final int ALWAYS_ZERO = 1 << 15 | 1 << 1;
  private static final int OPEN = 1 << 2;
  private static final int NOT_DRIVEN = 1;
  private static final int HIGHEST_CODE = 0xFFF;

  /** 0.17 s typically, 0.22 s at most. */
  private static final Duration CONVERSION = Duration.ofMillis(220);

  /** Only in a fire: in a cold room an honest number may keep its quarter degree for a day. */
  private static final Duration STILL_HOT = Duration.ofMinutes(15);

  public Max6675 {
    if (!(assumedColdJunctionC >= LEAST_COLD_JUNCTION_C
        && assumedColdJunctionC <= MOST_COLD_JUNCTION_C)) {
      throw new IllegalArgumentException(
          "assumedColdJunctionC must be -20 to 85, was " + assumedColdJunctionC);
    }
  }

  @Override
  public String name() {
    return "MAX6675 type K";
  }

  @Override
  public int spiMode() {
    return 0;
  }

  @Override
  public int mostClockHz() {
    return 4_300_000;
  }

  @Override
  public Duration conversion() {
    return CONVERSION;
  }

  @Override
  public Duration rest() {
    return CONVERSION;
  }

  @Override
  public Optional<Duration> stillAtMost(boolean hot) {
    return hot ? Optional.of(STILL_HOT) : Optional.empty();
  }

  /**
   * 17 steps from 700 to 1000 °C, at 3.3 V and 25 °C of the chip (8 steps below), each of 10.25 µV;
   * cold-junction compensation within 3 °C, and what the assumption adds.
   */
  @Override
  public ProbeErrors errors() {
    return new ProbeErrors(0, 17 * STEP_UV, 0, 3 + ASSUMPTION_ERROR_C, 0, STEP_UV, 0);
  }

  @Override
  public Talk talk(String probe) {
    return new Talk() {
      @Override
      public List<byte[]> look() {
        return List.of(new byte[FRAME_BYTES]);
      }

      @Override
      public Answer take(byte[] answer, Moment at) {
        return Answer.of(decode(answer, at, probe));
      }
    };
  }

  /** The reading of a frame, two bytes in the order they came. */
  Reading decode(byte[] bytes, Moment at, String probe) {
    int frame = (bytes[0] & 0xFF) << 8 | bytes[1] & 0xFF;
    if ((frame & ALWAYS_ZERO) != 0 || (frame & ~NOT_DRIVEN) == 0) {
      return Reading.faulty(at, probe, Fault.WIRING);
    }
    if ((frame & OPEN) != 0) {
      return Reading.faulty(at, probe, Fault.OPEN_CIRCUIT);
    }
    if (frame >> 3 == HIGHEST_CODE) {
      return Reading.faulty(at, probe, Fault.OUT_OF_RANGE);
    }
    return Reading.linearised(at, probe, hotJunctionC(shownC(frame)), OptionalDouble.empty());
  }

  /** °C as the chip shows it, by its straight line: bits 14 to 3. */
  static double shownC(int frame) {
    return (frame >> 3) * STEP_C;
  }

  private double hotJunctionC(double shownC) {
    double emfMv = SLOPE_UV_PER_C * (shownC - assumedColdJunctionC) / 1000;
    return ColdJunction.hotJunctionC(ThermocoupleType.K, emfMv, assumedColdJunctionC);
  }
}
