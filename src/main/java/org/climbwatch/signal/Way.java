package org.climbwatch.signal;

/**
 * How a signal came from one level to another: through readings between, as a couple does that is
 * drawn out of the fire or stands in an opened door, or by a wire.
 *
 * <p>A couple follows with a lag, each reading nearer to where it goes, and leaves a tail. The bare
 * ones of a gas kiln take more than a second for two thirds of the way (common practice). So with
 * readings at most two seconds apart nothing but a wire makes nine tenths of it at once, or in two
 * steps and then stands still (an amplifier that averages gives one reading between), or turns
 * round on the way. Slower readings may hide a couple's whole way: of them only a step is a wire's
 * that ends still and at the warmth of the terminals.
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
  private double lastStepC;
  private double highestRiseC;
  private double deepestFallC;
  private double highestPairC;
  private double deepestPairC;
  private double slowStepC;

  /** The signal stands here: ways begin here. */
  void startFrom(double celsius) {
    lastC = celsius;
    lastStepC = 0;
    highestRiseC = 0;
    deepestFallC = 0;
    highestPairC = 0;
    deepestPairC = 0;
    slowStepC = 0;
    broken = false;
  }

  /** Looks without a temperature lie between: what the wire did meanwhile nobody saw. */
  void broken() {
    broken = true;
  }

  void add(long millis, double celsius) {
    long since = millis - lastMillis;
    double stepC = celsius - lastC;
    if (broken || since <= CLOSE_MILLIS || since > GAP_MILLIS) {
      highestRiseC = Math.max(highestRiseC, stepC);
      deepestFallC = Math.max(deepestFallC, -stepC);
      highestPairC = Math.max(highestPairC, stepC + Math.max(lastStepC, 0));
      deepestPairC = Math.max(deepestPairC, -stepC - Math.min(lastStepC, 0));
      lastStepC = stepC;
    } else {
      slowStepC = Math.max(slowStepC, Math.abs(stepC));
      lastStepC = 0;
    }
    broken = false;
    lastC = celsius;
    lastMillis = millis;
  }

  /**
   * Whether no couple's way led from a level to another.
   *
   * @param still whether it stands still there
   * @param likeLead whether it reads there what a shorted lead reads
   */
  boolean isNone(double fromC, double toC, boolean still, boolean likeLead) {
    boolean up = toC > fromC;
    double wayC = Math.abs(toC - fromC);
    double alongC = up ? highestRiseC : deepestFallC;
    double againstC = up ? deepestFallC : highestRiseC;
    double pairC = up ? highestPairC : deepestPairC;
    return alongC >= AT_ONCE * wayC
        || (still && pairC >= AT_ONCE * wayC)
        || (still && likeLead && slowStepC >= AT_ONCE * wayC)
        || (againstC >= TURNED * wayC && alongC > 0);
  }
}
