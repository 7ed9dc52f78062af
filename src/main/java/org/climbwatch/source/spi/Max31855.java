package org.climbwatch.source.spi;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * A MAX31855: a straight line, read only. SPI mode 0, clock 5 MHz at most; it converts by itself.
 *
 * <pre>
 *  bit  31                18  17  16  15                 4   3   2   1   0
 *      +--------------------+---+---+---------------------+---+---+---+---+
 *      | thermocouple       | 0 | F | cold junction       | 0 |SCV|SCG|OC |
 *      | signed, 0.25 °C    |   |   | signed, 0.0625 °C   |   |   |   |   |
 *      +--------------------+---+---+---------------------+---+---+---+---+
 *  byte 0: 31..24    byte 1: 23..16    byte 2: 15..8    byte 3: 7..0
 *
 *  F = SCV or SCG or OC: short to the supply, short to ground, open circuit
 *  17 and 3 are reserved and always 0
 * </pre>
 *
 * <p>The chip makes its temperature with a straight line, T = emf / k + cold junction, and leaves
 * the correction to the user. So the line is undone here: emf = k (T - cold junction), which is
 * what the thermocouple gave; the core then goes by the reference function. At 1222 °C the straight
 * line alone is 19 °C low for Type K.
 *
 * <p>A frame that no working chip sends (all zeros, all ones, a reserved bit, F at odds with its
 * causes, a cold junction where silicon does not work) is {@link Fault#WIRING}. All zeros would be
 * both junctions at 0.00 °C exactly, but is what a bus without a chip gives.
 *
 * @param type letter that the chip is trimmed for; it can't be read from the chip
 * @see "Maxim MAX31855 data sheet, 19-5793 Rev 5"
 */
public record Max31855(ThermocoupleType type) implements Chip {
  static final int FRAME_BYTES = 4;

  /** Thermocouple, cold junction and fault test together: 70 ms typically, 100 ms at most. */
  private static final Duration CONVERSION = Duration.ofMillis(100);

  /**
   * Data change only while chip select is high. A fire moves a step of 0.25 °C in seconds; a cold
   * kiln may lie within a step of both junctions for long, but hardly an hour.
   */
  private static final Duration STILL_HOT = Duration.ofMinutes(10);

  private static final Duration STILL_COLD = Duration.ofMinutes(60);

  private static final double STEP_C = 0.25;

  private static final int RESERVED = 1 << 17 | 1 << 3;
  private static final int FAULT = 1 << 16;
  private static final int SHORT_TO_SUPPLY = 1 << 2;
  private static final int SHORT_TO_GROUND = 1 << 1;
  private static final int OPEN = 1;
  private static final int CAUSES = SHORT_TO_SUPPLY | SHORT_TO_GROUND | OPEN;

  /** °C that the thermocouple bits stand for at most, as the data sheet's first page has it. */
  private static final double LEAST_C = -270;

  private static final double MOST_C = 1800;

  /** °C of the chip itself: its table of codes goes down to this, its ratings up to the other. */
  private static final double LEAST_COLD_JUNCTION_C = -55;

  private static final double MOST_COLD_JUNCTION_C = 125;

  /**
   * @throws IllegalArgumentException for B, for which none is made
   */
  public Max31855 {
    slopeUvPerC(type);
  }

  @Override
  public String name() {
    return "MAX31855 type " + type;
  }

  @Override
  public int spiMode() {
    return 0;
  }

  @Override
  public int mostClockHz() {
    return 5_000_000;
  }

  @Override
  public Duration conversion() {
    return CONVERSION;
  }

  @Override
  public Optional<Duration> stillAtMost(boolean hot) {
    return Optional.of(hot ? STILL_HOT : STILL_COLD);
  }

  /**
   * Table of thermal characteristics, -20 to 85 °C: gain and offset up to the letter's end, and the
   * cold junction. Gain, offset and steps are stated in degrees of the straight line, so they stand
   * for so many µV: undone, a degree of it is 1.15 °C for Type K at 1250 °C, and for Type S 0.8 °C
   * there and 1.6 °C in a room.
   */
  @Override
  public ProbeErrors errors() {
    double gainAndOffsetC =
        switch (type) {
          case J, T -> 2;
          case E -> 3;
          default -> 4;
        };
    double slope = slopeUvPerC(type);
    return new ProbeErrors(0, gainAndOffsetC * slope, 0, 2, 0, STEP_C * slope, 0);
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
        return Answer.of(decode(answer, type, at, probe));
      }
    };
  }

  /**
   * µV per °C of the straight line that a chip trimmed for a letter uses.
   *
   * @throws IllegalArgumentException for B, for which none is made
   */
  static double slopeUvPerC(ThermocoupleType type) {
    return switch (type) {
      case K -> 41.276;
      case J -> 57.953;
      case N -> 36.256;
      case S -> 9.587;
      case T -> 52.18;
      case E -> 76.373;
      case R -> 10.506;
      case B ->
          throw new IllegalArgumentException(
              "no MAX31855 is made for type B; allowed: K, J, N, S, T, E, R");
    };
  }

  /**
   * The reading of a frame.
   *
   * @param bytes the four bytes in the order they came
   * @param type letter that the chip is trimmed for
   */
  static Reading decode(byte[] bytes, ThermocoupleType type, Moment at, String probe) {
    int frame = frame(bytes);
    if (isImpossible(frame)) {
      return Reading.faulty(at, probe, Fault.WIRING);
    }
    if ((frame & CAUSES) != 0) {
      return Reading.faulty(at, probe, cause(frame));
    }
    double shownC = thermocoupleC(frame);
    if (shownC < LEAST_C || shownC > MOST_C) {
      return Reading.faulty(at, probe, Fault.OUT_OF_RANGE);
    }
    double coldJunctionC = coldJunctionC(frame);
    double emfUv = slopeUvPerC(type) * (shownC - coldJunctionC);
    return Reading.emf(at, probe, emfUv / 1000, coldJunctionC);
  }

  private static int frame(byte[] bytes) {
    if (bytes.length != FRAME_BYTES) {
      throw new IllegalArgumentException("a frame has 4 bytes, not " + bytes.length);
    }
    return (bytes[0] & 0xFF) << 24
        | (bytes[1] & 0xFF) << 16
        | (bytes[2] & 0xFF) << 8
        | bytes[3] & 0xFF;
  }

  private static boolean isImpossible(int frame) {
    boolean faultSaid = (frame & FAULT) != 0;
    boolean faultCaused = (frame & CAUSES) != 0;
    double coldJunctionC = coldJunctionC(frame);
    return frame == 0
        || (frame & RESERVED) != 0
        || faultSaid != faultCaused
        || coldJunctionC < LEAST_COLD_JUNCTION_C
        || coldJunctionC > MOST_COLD_JUNCTION_C;
  }

  /**
   * One cause where the chip names several. Which comes first is our choice: a short is a touching
   * wire that can be found by looking, so it goes before an open circuit.
   */
  private static Fault cause(int frame) {
    if ((frame & SHORT_TO_SUPPLY) != 0) {
      return Fault.SHORT_TO_SUPPLY;
    }
    return (frame & SHORT_TO_GROUND) != 0 ? Fault.SHORT_TO_GROUND : Fault.OPEN_CIRCUIT;
  }

  /** °C as the chip shows it, by its straight line: bits 31 to 18. */
  static double thermocoupleC(int frame) {
    return (frame >> 18) * STEP_C;
  }

  /** °C of the chip: bits 15 to 4. */
  static double coldJunctionC(int frame) {
    return ((short) frame >> 4) * 0.0625;
  }
}
