package org.climbwatch.signal;

/**
 * A value and the interval that is meant to hold the true one nine times out of ten.
 *
 * @param low may be negative infinity
 * @param best between the two
 * @param high may be infinity
 */
public record Span(double low, double best, double high) {
  public Span {
    if (!(low <= best && best <= high)) {
      throw new IllegalArgumentException(
          "a span must be in order, was " + low + ", " + best + ", " + high);
    }
  }
}
