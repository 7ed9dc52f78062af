package org.climbwatch.thermocouple;

/**
 * t(E) of one thermocouple type over the range where one emf means one temperature.
 *
 * <p>Two tables: the reference functions are cut at 0 °C, where the curvature of most jumps; Type B
 * is cut at 250 °C, below which it flattens towards its least emf. Types that are published down to
 * -270 °C flatten there, too, and have a third below -200 °C, where the published inverses end.
 */
final class InverseFunction {
  /** mV: half a step of the record's grid, so that an end of the range survives its rounding. */
  private static final double ROUNDING_MV = 5e-5;

  private static final double B_FLAT_BELOW_C = 250;

  private static final double FLAT_BELOW_C = -200;

  private final ThermocoupleType type;
  private final ReferenceFunction forward;
  private final double lowestC;
  private final double highestC;
  private final double lowestMv;
  private final double highestMv;
  private final double cutMv;
  private final double flatBelowMv;
  private final InverseTable.Axis lowerAxis;
  private final InverseTable lower;
  private final InverseTable upper;

  /** The same as {@link #lower} where a type has no such part. */
  private final InverseTable flat;

  InverseFunction(ThermocoupleType type, ReferenceFunction forward) {
    this.type = type;
    this.forward = forward;
    boolean typeB = type == ThermocoupleType.B;
    lowestC = type.lowestInverseC();
    highestC = forward.highestC();
    lowestMv = forward.emfMv(lowestC);
    highestMv = forward.emfMv(highestC);
    double cutC = typeB ? B_FLAT_BELOW_C : 0;
    cutMv = forward.emfMv(cutC);
    lowerAxis = typeB ? InverseTable.Axis.ROOT_ABOVE_LEAST_B : InverseTable.Axis.EMF;
    boolean flattens = lowestC < FLAT_BELOW_C - 10; // Type J ends at -210 °C, still steep
    double flatBelowC = flattens ? FLAT_BELOW_C : lowestC;
    flatBelowMv = forward.emfMv(flatBelowC);
    lower = new InverseTable(forward, lowerAxis, flatBelowC, cutC);
    flat = flattens ? new InverseTable(forward, InverseTable.Axis.EMF, lowestC, flatBelowC) : lower;
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
      return emfMv < flatBelowMv ? inTheFlatC(emfMv) : lower.temperatureC(lowerAxis.of(emfMv));
    }
    return endC(emfMv);
  }

  /** A step of Newton's method on top: pieces of even width are too wide for so sharp a bend. */
  private double inTheFlatC(double emfMv) {
    double near = Math.max(flat.temperatureC(emfMv), lowestC);
    double t = near + (emfMv - forward.emfMv(near)) / forward.slopeMvPerC(near);
    return Math.min(Math.max(t, lowestC), FLAT_BELOW_C);
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
