package org.climbwatch.thermocouple;

import java.util.List;

/**
 * The printed inverse polynomials of NIST SRD 60, bare: what the tables are measured against.
 *
 * <p>Where two ranges overlap (R and S, 1064 to 1200 °C) the lower one serves, as the cheapest
 * choice of a piece does.
 */
final class PublishedInverse {
  private final Polynomial[] pieces;

  PublishedInverse(ThermocoupleType type) {
    pieces = pieces(type).toArray(new Polynomial[0]);
  }

  static List<Polynomial> pieces(ThermocoupleType type) {
    return CoefficientFile.polynomials(CoefficientFile.text(), type, "inverse");
  }

  /** °C at which the printed inverse of a type begins. */
  static double lowestC(ThermocoupleType type) {
    return switch (type) {
      case B -> 250;
      case J -> -210;
      case R, S -> -50;
      case E, K, N, T -> -200;
    };
  }

  double temperatureC(double emfMv) {
    int i = 0;
    while (i < pieces.length - 1 && emfMv > pieces[i].highest()) {
      i++;
    }
    return pieces[i].value(emfMv);
  }
}
