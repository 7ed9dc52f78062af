package org.climbwatch.signal;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * How much the looks scatter that one reading is the middle of: the middle of the spreads of thirty
 * readings.
 *
 * <p>{@link Noise} sees what is left of it from one reading to the next. Mains hum and a motor's
 * brushes stay within a reading and leave next to nothing there.
 */
final class LookSpread {
  private static final int RUN = 30;

  private final double[] spreadsC = new double[RUN];
  private int filled;
  private OptionalDouble spreadC = OptionalDouble.empty();

  void reset() {
    filled = 0;
    spreadC = OptionalDouble.empty();
  }

  /**
   * @param ofReadingC °C, standard; empty for a reading of a single look
   */
  void add(OptionalDouble ofReadingC) {
    if (ofReadingC.isEmpty()) {
      return;
    }
    spreadsC[filled++] = ofReadingC.getAsDouble();
    if (filled == RUN) {
      Arrays.sort(spreadsC);
      spreadC = OptionalDouble.of(spreadsC[RUN / 2]);
      filled = 0;
    }
  }

  /** °C, of the last full run; empty before the first. */
  OptionalDouble spreadC() {
    return spreadC;
  }
}
