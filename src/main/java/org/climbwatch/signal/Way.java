package org.climbwatch.signal;

/**
 * How a signal came from one level to another: through readings between, as a couple does that is
 * drawn out of the fire or stands in an opened door, or from one reading to the next.
 *
 * <p>A couple follows with a lag, each reading nearer to where it goes. The bare ones of a gas kiln
 * take more than a second for two thirds of the way (common practice); so with readings at most two
 * seconds apart nothing but a wire makes nine tenths of it at once, or turns round on the way.
 */
final class Way {
  /** ms from one reading to the next. More may hide a couple's whole way. */
  private static final long CLOSE_MILLIS = 2_100;

  /** ms without any reading, where the slowest come 10 s apart: nobody saw a way then. */
  private static final long GAP_MILLIS = 25_000;

  /** Of the way. */
  private static final double AT_ONCE = 0.9;

  private static final double TURNED = 0.15;

  private double lastC;
  private long lastMillis;
  private boolean broken;
  private double highestRiseC;
  private double deepestFallC;

  /** The signal stands here: ways begin here. */
  void startFrom(double celsius) {
    lastC = celsius;
    highestRiseC = 0;
    deepestFallC = 0;
    broken = false;
  }

  /** Looks without a temperature lie between: what the wire did meanwhile nobody saw. */
  void broken() {
    broken = true;
  }

  void add(long millis, double celsius) {
    long since = millis - lastMillis;
    if (broken || since <= CLOSE_MILLIS || since > GAP_MILLIS) {
      highestRiseC = Math.max(highestRiseC, celsius - lastC);
      deepestFallC = Math.max(deepestFallC, lastC - celsius);
    }
    broken = false;
    lastC = celsius;
    lastMillis = millis;
  }

  /** Whether nothing led from a level to another but a step, or a to and fro. */
  boolean isNone(double fromC, double toC) {
    double wayC = Math.abs(toC - fromC);
    double alongC = toC > fromC ? highestRiseC : deepestFallC;
    double againstC = toC > fromC ? deepestFallC : highestRiseC;
    return alongC >= AT_ONCE * wayC || (againstC >= TURNED * wayC && alongC > 0);
  }
}
