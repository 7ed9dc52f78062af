package org.climbwatch.thermocouple;

/**
 * t(E) of one thermocouple type over the range where one emf means one temperature.
 *
 * <p>Two tables: the reference functions are cut at 0 °C, where the curvature of most jumps; Type B
 * is cut at 250 °C, below which it flattens towards its least emf.
 */
final class InverseFunction {
  /** mV: half a step of the record's grid, so that an end of the range survives its rounding. */
  private static final double ROUNDING_MV = 5e-5;

  private static final double B_FLAT_BELOW_C = 250;

  private final InverseTable lower;
  private final InverseTable upper;
  private final double cutMv;
  private final double lowestC;
  private final double highestC;
  private final double lowestMv;
  private final double highestMv;

  /** mV below the lowest that rounding may account for: none where it would be ambiguous. */
  private final double slackMv;

  InverseFunction(ThermocoupleType type, ReferenceFunction forward) {
    boolean typeB = type == ThermocoupleType.B;
    lowestC = type.lowestInverseC();
    highestC = forward.highestC();
    lowestMv = forward.emfMv(lowestC);
    highestMv = forward.emfMv(highestC);
    slackMv = typeB ? 0 : ROUNDING_MV;
    double cutC = typeB ? B_FLAT_BELOW_C : 0;
    cutMv = forward.emfMv(cutC);
    InverseTable.Axis lowerAxis =
        typeB ? InverseTable.Axis.ROOT_ABOVE_LEAST_B : InverseTable.Axis.EMF;
    lower = new InverseTable(forward, lowerAxis, lowestC, cutC);
    upper = new InverseTable(forward, InverseTable.Axis.EMF, cutC, highestC);
  }

  double lowestMv() {
    return lowestMv;
  }

  double highestMv() {
    return highestMv;
  }

  /** °C of an emf; NaN outside the range. */
  double temperatureC(double emfMv) {
    if (emfMv > lowestMv && emfMv < highestMv) {
      double t = (emfMv < cutMv ? lower : upper).temperatureC(emfMv);
      // the last bit of a piece may pass the end, where the forward function would refuse it
      return t < highestC ? t : highestC;
    }
    if (emfMv >= highestMv && emfMv <= highestMv + ROUNDING_MV) {
      return highestC;
    }
    return emfMv <= lowestMv && emfMv >= lowestMv - slackMv ? lowestC : Double.NaN;
  }
}
