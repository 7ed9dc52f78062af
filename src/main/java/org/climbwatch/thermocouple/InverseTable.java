package org.climbwatch.thermocouple;

/**
 * t(E) over a span as cubic pieces of even width between nodes on the reference function.
 *
 * <p>A piece takes value and slope of the reference function at both ends (cubic Hermite
 * interpolation), so the error falls with the fourth power of its width: 1024 pieces, 32 KiB,
 * follow every type within a few microdegrees, where the published inverse polynomials are off by
 * up to 0.06 °C, and cost no more than they do.
 */
final class InverseTable {
  private static final int PIECES = 1024;

  /** °C: a Newton step as small as this leaves an error far below what a double can tell. */
  private static final double SMALL_STEP_C = 1e-7;

  /** Pieces of a reference function meet with a tiny step, where Newton's method would not end. */
  private static final int MOST_STEPS = 12;

  private final double lowest;
  private final double piecesPerUnit;

  /**
   * Four coefficients a piece, lowest order first, of the part of the piece that is passed. One
   * constant piece more than there are saves the conversion a look at the upper end.
   */
  private final double[] coefficients = new double[4 * (PIECES + 1)];

  /** What the pieces are even steps of. */
  enum Axis {
    /** mV. */
    EMF,
    /**
     * The root of the mV above the least emf of Type B. Near that emf t(E) is vertical like a
     * square root at zero, and over its root it is smooth.
     */
    ROOT_ABOVE_LEAST_B;

    /** mV at 21.02 °C, where the slope of Type B changes its sign (NIST Monograph 175). */
    private static final double LEAST_B_MV = -0.002584972;

    double of(double emfMv) {
      return this == EMF ? emfMv : Math.sqrt(emfMv - LEAST_B_MV);
    }

    private double emfMv(double place) {
      return this == EMF ? place : place * place + LEAST_B_MV;
    }

    private double emfSlope(double place) {
      return this == EMF ? 1 : 2 * place;
    }
  }

  InverseTable(ReferenceFunction function, Axis axis, double lowestC, double highestC) {
    lowest = axis.of(function.emfMv(lowestC));
    double width = (axis.of(function.emfMv(highestC)) - lowest) / PIECES;
    piecesPerUnit = 1 / width;
    double t0 = lowestC;
    // from above: Type N has a kink of 0.9 % at 0 °C, where its tables meet
    double m0 = width * axis.emfSlope(lowest) / function.slopeMvPerC(Math.nextUp(lowestC));
    for (int i = 0; i < PIECES; i++) {
      double place = lowest + (i + 1) * width;
      double t1 = i == PIECES - 1 ? highestC : solve(function, axis.emfMv(place), t0 + m0);
      double m1 = width * axis.emfSlope(place) / function.slopeMvPerC(t1);
      coefficients[4 * i] = t0;
      coefficients[4 * i + 1] = m0;
      coefficients[4 * i + 2] = 3 * (t1 - t0) - 2 * m0 - m1;
      coefficients[4 * i + 3] = m0 + m1 - 2 * (t1 - t0);
      t0 = t1;
      m0 = m1;
    }
    coefficients[4 * PIECES] = highestC;
  }

  /** °C at a place on the axis, from the lowest to the highest of the span. */
  double temperatureC(double place) {
    double pieces = (place - lowest) * piecesPerUnit;
    int piece = (int) pieces;
    double s = pieces - piece;
    double[] c = coefficients;
    int i = 4 * piece;
    return c[i] + s * (c[i + 1] + s * (c[i + 2] + s * c[i + 3]));
  }

  private static double solve(ReferenceFunction function, double emfMv, double nearC) {
    double t = nearC;
    for (int i = 0; i < MOST_STEPS; i++) {
      double stepC = (emfMv - function.emfMv(t)) / function.slopeMvPerC(t);
      t += stepC;
      if (Math.abs(stepC) < SMALL_STEP_C) {
        break;
      }
    }
    return t;
  }
}
