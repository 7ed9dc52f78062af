package org.climbwatch.thermocouple;

import java.util.List;

/**
 * E(t) of one thermocouple type: polynomials by range, and for Type K above 0 °C a bump {@code a0
 * exp(a1 (t - a2)^2)} besides.
 *
 * @see "NIST Monograph 175 (1993)"
 */
final class ReferenceFunction {
  private final Piece[] pieces;
  private final double[] bump;

  /** One polynomial, lowest order first: mV from °C. */
  record Piece(double lowestC, double highestC, double[] coefficients) {
    double value(double t) {
      double sum = 0;
      for (int i = coefficients.length - 1; i >= 0; i--) {
        sum = sum * t + coefficients[i];
      }
      return sum;
    }

    double slope(double t) {
      double sum = 0;
      for (int i = coefficients.length - 1; i >= 1; i--) {
        sum = sum * t + i * coefficients[i];
      }
      return sum;
    }
  }

  ReferenceFunction(List<Piece> pieces, double[] bump) {
    this.pieces = pieces.toArray(new Piece[0]);
    this.bump = bump;
  }

  double lowestC() {
    return pieces[0].lowestC();
  }

  double highestC() {
    return pieces[pieces.length - 1].highestC();
  }

  /** mV at °C within the range. */
  double emfMv(double t) {
    double polynomial = piece(t).value(t);
    return bumped(t) ? polynomial + bumpMv(t) : polynomial;
  }

  /** mV/°C at °C within the range. */
  double slopeMvPerC(double t) {
    double polynomial = piece(t).slope(t);
    return bumped(t) ? polynomial + 2 * bump[1] * (t - bump[2]) * bumpMv(t) : polynomial;
  }

  private boolean bumped(double t) {
    return bump.length > 0 && t > 0;
  }

  private double bumpMv(double t) {
    double away = t - bump[2];
    return bump[0] * StrictMath.exp(bump[1] * away * away);
  }

  private Piece piece(double t) {
    int i = 0;
    while (i < pieces.length - 1 && t > pieces[i].highestC()) {
      i++;
    }
    return pieces[i];
  }
}
