package org.climbwatch.source.spi;

import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * The MAX31855, from its frame to the raw signal.
 *
 * <pre>
 *  31           18  17  16  15            4  3   2   1   0
 * | hot junction  | 0 | F | cold junction  | 0 |SCV|SCG|OC |
 *   14 bits, 0.25°C         12 bits, 0.0625°C   F = SCV or SCG or OC
 * </pre>
 *
 * <p>Its own hot junction is a straight line, {@code voltage / k + cold junction}, off by tens of
 * degrees at the top. The line is undone here: {@code emf = k (shown - cold junction)}.
 *
 * @see "Maxim MAX31855 data sheet, 19-5793 Rev 5, 1/15"
 */
final class Max31855 {
  static final int FRAME_BYTES = 4;

  private static final int RESERVED = 1 << 17 | 1 << 3;
  private static final int FAULT = 1 << 16;
  private static final int SHORT_TO_SUPPLY = 1 << 2;
  private static final int SHORT_TO_GROUND = 1 << 1;
  private static final int OPEN = 1;
  private static final int ANY_FAULT = SHORT_TO_SUPPLY | SHORT_TO_GROUND | OPEN;
  private static final double HOT_STEP_C = 0.25;
  private static final double COLD_STEP_C = 0.0625;

  private Max31855() {}

  /**
   * What a frame says.
   *
   * @param type the letter that the chip was trimmed for; it cannot be read from the chip
   * @param bytes the four of a frame, first on the wire first
   */
  static Reading reading(Moment at, String probe, ThermocoupleType type, byte[] bytes) {
    int frame =
        (bytes[0] & 0xff) << 24
            | (bytes[1] & 0xff) << 16
            | (bytes[2] & 0xff) << 8
            | bytes[3] & 0xff;
    if (impossible(frame)) {
      return Reading.faulty(at, probe, Fault.WIRING);
    }
    if ((frame & OPEN) != 0) {
      return Reading.faulty(at, probe, Fault.OPEN_CIRCUIT);
    }
    if ((frame & SHORT_TO_GROUND) != 0) {
      return Reading.faulty(at, probe, Fault.SHORT_TO_GROUND);
    }
    if ((frame & SHORT_TO_SUPPLY) != 0) {
      return Reading.faulty(at, probe, Fault.SHORT_TO_SUPPLY);
    }
    double shownC = (frame >> 18) * HOT_STEP_C;
    double coldJunctionC = ((short) frame >> 4) * COLD_STEP_C;
    double emfMv = slopeMvPerC(type) * (shownC - coldJunctionC);
    return Reading.emf(at, probe, emfMv, coldJunctionC);
  }

  /**
   * All zeros would need both junctions at exactly 0 °C: a dead bus. Reserved bits are always 0,
   * and the common fault bit always follows the three.
   */
  private static boolean impossible(int frame) {
    boolean faultBit = (frame & FAULT) != 0;
    boolean anyFault = (frame & ANY_FAULT) != 0;
    return frame == 0 || (frame & RESERVED) != 0 || faultBit != anyFault;
  }

  /** k of the data sheet's table, mV/°C. */
  private static double slopeMvPerC(ThermocoupleType type) {
    return switch (type) {
      case K -> 0.041276;
      case J -> 0.057953;
      case N -> 0.036256;
      case S -> 0.009587;
      case T -> 0.05218;
      case E -> 0.076373;
      case R -> 0.010506;
      case B -> throw new IllegalArgumentException("there is no MAX31855 for Type B");
    };
  }
}
