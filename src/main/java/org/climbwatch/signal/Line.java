package org.climbwatch.signal;

/**
 * A straight line through means of equal spans, by least squares.
 *
 * @param middleC °C at the middle of the spans
 * @param slope °C a span
 * @param spans how many
 * @param errorC °C, standard, of a mean; widened by its lag-one correlation
 */
record Line(double middleC, double slope, int spans, double errorC) {
  /** °C, standard: half a step of a 14-bit amplifier hides at least this (0.25 °C / sqrt 12). */
  private static final double LEAST_NOISE_C = 0.07;

  private static final double MOST_CORRELATION = 0.9;

  static Line through(double[] meanC, int from, int spans) {
    double middleC = mean(meanC, from, spans);
    double slope = slope(meanC, from, spans);
    return new Line(middleC, slope, spans, errorC(meanC, from, spans, middleC, slope));
  }

  /** °C where it leads so many spans after its middle. */
  double at(double ahead) {
    return middleC + slope * ahead;
  }

  /** The square of the standard error there, of a slope and of a place, for an error of one. */
  double squareOfPlace(double ahead) {
    return 1.0 / spans + ahead * ahead / squares(spans);
  }

  private static double errorC(double[] meanC, int from, int spans, double middleC, double slope) {
    double sum = 0;
    double neighbours = 0;
    double last = 0;
    for (int i = 0; i < spans; i++) {
      double rest = meanC[from + i] - middleC - slope * (i - (spans - 1) / 2.0);
      sum += rest * rest;
      neighbours += rest * last;
      last = rest;
    }
    double correlation = sum > 0 ? Math.min(Math.max(neighbours / sum, 0), MOST_CORRELATION) : 0;
    double noiseC = Math.max(Math.sqrt(sum / (spans - 2)), LEAST_NOISE_C);
    return noiseC * Math.sqrt((1 + correlation) / (1 - correlation));
  }

  static double slope(double[] meanC, int from, int spans) {
    double sum = 0;
    for (int i = 0; i < spans; i++) {
      sum += meanC[from + i] * (i - (spans - 1) / 2.0);
    }
    return sum / squares(spans);
  }

  static double mean(double[] meanC, int from, int spans) {
    double sum = 0;
    for (int i = from; i < from + spans; i++) {
      sum += meanC[i];
    }
    return sum / spans;
  }

  /** Sum of the squares of so many places about their middle. */
  static double squares(int spans) {
    return spans * (spans * (double) spans - 1) / 12;
  }
}
