package org.climbwatch.thermocouple;

/**
 * One published polynomial and the range that it holds for.
 *
 * @param lowest of the argument: °C of a forward function, mV of a published inverse
 * @param highest of the argument
 * @param coefficients lowest order first
 */
record Polynomial(double lowest, double highest, double[] coefficients) {
  double value(double x) {
    double sum = 0;
    for (int i = coefficients.length - 1; i >= 0; i--) {
      sum = sum * x + coefficients[i];
    }
    return sum;
  }

  /** The first derivative. */
  double slope(double x) {
    double sum = 0;
    for (int i = coefficients.length - 1; i >= 1; i--) {
      sum = sum * x + i * coefficients[i];
    }
    return sum;
  }
}
