package org.climbwatch.signal;

/**
 * How a signal came from one level to another: through readings between, as a couple does that is
 * drawn out of the fire or stands in an opened door, or by a wire.
 *
 * <p>A couple follows with a lag, each reading nearer to where it goes, and leaves a tail. The bare
 * ones of a gas kiln take more than a second for two thirds of the way (common practice). So
 * nothing but a wire makes nine tenths of it within two seconds: at once; or in two steps (an
 * amplifier that averages gives one reading between), or with a turn on the way, where it stands
 * still at its end from the first reading on. A couple in a door that is opened, shut and opened
 * again turns, too, but leaves its tail. Slower readings may hide a couple's whole way: of them
 * only steps are a wire's that end still and at the warmth of the terminals.
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
  private long lastSeenMillis;
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
    boolean unseen = broken || since > GAP_MILLIS;
    if (unseen || since <= CLOSE_MILLIS) {
      long seenMillis = unseen ? 0 : since;
      highestRiseC = Math.max(highestRiseC, stepC);
      deepestFallC = Math.max(deepestFallC, -stepC);
      slowStepC = Math.max(slowStepC, Math.abs(stepC + lastStepC));
      double pairC = seenMillis + lastSeenMillis <= CLOSE_MILLIS ? stepC + lastStepC : stepC;
      highestPairC = Math.max(highestPairC, pairC);
      deepestPairC = Math.max(deepestPairC, -pairC);
      lastStepC = stepC;
      lastSeenMillis = seenMillis;
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
        || (still && againstC >= TURNED * wayC && alongC > 0);
  }
}
