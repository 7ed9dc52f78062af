package org.climbwatch.thermocouple;

import java.util.List;

/**
 * E(t) of one thermocouple type: polynomials by range, and for Type K above 0 °C a bump {@code a0
 * exp(a1 (t - a2)^2)} besides.
 *
 * <p>Neighbouring pieces meet within 8e-8 mV (2e-6 °C); the lower one serves the shared point.
 *
 * @see "NIST Monograph 175 (1993)"
 */
final class ReferenceFunction {
  private final Polynomial[] pieces;

  /** a0, a1, a2, or nothing. */
  private final double[] bump;

  ReferenceFunction(List<Polynomial> pieces, double[] bump) {
    this.pieces = pieces.toArray(new Polynomial[0]);
    this.bump = bump;
  }

  double lowestC() {
    return pieces[0].lowest();
  }

  double highestC() {
    return pieces[pieces.length - 1].highest();
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

  /** StrictMath, so that a PC and a Pi find the same last bit. */
  private double bumpMv(double t) {
    double away = t - bump[2];
    return bump[0] * StrictMath.exp(bump[1] * away * away);
  }

  private Polynomial piece(double t) {
    int i = 0;
    while (i < pieces.length - 1 && t > pieces[i].highest()) {
      i++;
    }
    return pieces[i];
  }
}
