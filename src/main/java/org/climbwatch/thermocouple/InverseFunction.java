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

  private final ThermocoupleType type;
  private final double lowestC;
  private final double highestC;
  private final double lowestMv;
  private final double highestMv;
  private final double cutMv;
  private final InverseTable.Axis lowerAxis;
  private final InverseTable lower;
  private final InverseTable upper;

  InverseFunction(ThermocoupleType type, ReferenceFunction forward) {
    this.type = type;
    boolean typeB = type == ThermocoupleType.B;
    lowestC = type.lowestInverseC();
    highestC = forward.highestC();
    lowestMv = forward.emfMv(lowestC);
    highestMv = forward.emfMv(highestC);
    double cutC = typeB ? B_FLAT_BELOW_C : 0;
    cutMv = forward.emfMv(cutC);
    lowerAxis = typeB ? InverseTable.Axis.ROOT_ABOVE_LEAST_B : InverseTable.Axis.EMF;
    lower = new InverseTable(forward, lowerAxis, lowestC, cutC);
    upper = new InverseTable(forward, InverseTable.Axis.EMF, cutC, highestC);
  }

  double lowestMv() {
    return lowestMv;
  }

  double highestMv() {
    return highestMv;
  }

  /**
   * °C of an emf.
   *
   * @throws OutOfRange outside the range by more than the record's rounding, and for NaN
   */
  double temperatureC(double emfMv) {
    if (emfMv >= cutMv && emfMv < highestMv) {
      double t = upper.temperatureC(emfMv);
      // the last bit of a piece may pass the end, where the forward function would refuse it
      return t < highestC ? t : highestC;
    }
    if (emfMv > lowestMv && emfMv < cutMv) {
      return lower.temperatureC(lowerAxis.of(emfMv));
    }
    return endC(emfMv);
  }

  private double endC(double emfMv) {
    // no slack where it would reach the emfs of Type B that mean two temperatures
    double slackMv = type == ThermocoupleType.B ? 0 : ROUNDING_MV;
    if (emfMv <= lowestMv && emfMv >= lowestMv - slackMv) {
      return lowestC;
    }
    if (emfMv >= highestMv && emfMv <= highestMv + ROUNDING_MV) {
      return highestC;
    }
    throw OutOfRange.emf(type, emfMv, lowestMv, highestMv);
  }
}
