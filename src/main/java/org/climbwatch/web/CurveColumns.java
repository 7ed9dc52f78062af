package org.climbwatch.web;

/**
 * A probe's curve in a firing, column by column.
 *
 * @param probe its name
 * @param elapsedMs ms since the firing's first reading, rising
 * @param temperatureC °C; NaN where the curve has a gap
 */
public record CurveColumns(String probe, long[] elapsedMs, double[] temperatureC) {
  public CurveColumns {
    if (elapsedMs.length != temperatureC.length) {
      throw new IllegalArgumentException(
          "columns must be of one length, were " + elapsedMs.length + ", " + temperatureC.length);
    }
  }
}
