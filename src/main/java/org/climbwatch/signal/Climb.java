package org.climbwatch.signal;

/**
 * How fast the temperature rises, and how well that is known.
 *
 * @param cPerHour °C/h, negative while falling
 * @param uncertaintyCPerHour °C/h, expanded with k = 2
 */
public record Climb(double cPerHour, double uncertaintyCPerHour) {
  public Climb {
    if (!Double.isFinite(cPerHour) || !(uncertaintyCPerHour >= 0)) {
      throw new IllegalArgumentException(
          "climb must be finite, was " + cPerHour + " ± " + uncertaintyCPerHour + " °C/h");
    }
  }
}
