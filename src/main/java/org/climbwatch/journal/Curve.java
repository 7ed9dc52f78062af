package org.climbwatch.journal;

/**
 * A firing's temperatures over time, in columns of equal length.
 *
 * <p>A temperature of NaN is a gap: nothing is known between its neighbours and no line may be
 * drawn there. Gaps are never first nor last. Spikes are left out.
 *
 * @param elapsedMs ms since the firing's first reading, never falling
 * @param temperatureC °C, or NaN for a gap
 */
@SuppressWarnings("ArrayRecordComponent")
public record Curve(long[] elapsedMs, double[] temperatureC) {
  /** How many points there are, gaps counted. */
  public int points() {
    return elapsedMs.length;
  }
}
