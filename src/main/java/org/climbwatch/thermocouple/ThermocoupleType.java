package org.climbwatch.thermocouple;

/**
 * The letter-designated thermocouples by their ITS-90 reference functions, reference junction at 0
 * °C.
 *
 * <p>Both ways agree with the reference function within 0.0001 °C over the whole range of the
 * inverse (measured: see the conversion test).
 *
 * @see "NIST Monograph 175 (1993); NIST SRD 60; ASTM E230; IEC 60584-1"
 */
public enum ThermocoupleType {
  /** Two temperatures share an emf near room temperature, so the inverse begins at 43 °C. */
  B(43),
  E(-200),
  J(-210),
  K(-200),
  N(-200),
  R(-50),
  S(-50),
  T(-200);

  /** mV: half a step of the record's grid, so that an end of a range survives rounding. */
  private static final double ROUNDING_MV = 5e-5;

  /** °C up to which Type B is too flat for even steps of emf and is solved afresh. */
  private static final double B_FLAT_BELOW_C = 250;

  private final double lowestInverseC;
  private Curves curves;

  /**
   * Made when a type is first used: a daemon needs one of eight. The inverse is cut at 0 °C, where
   * the curvature of most functions jumps.
   */
  private record Curves(
      ReferenceFunction forward,
      InverseTable belowZero,
      InverseTable aboveZero,
      double lowMv,
      double highMv) {}

  ThermocoupleType(double lowestInverseC) {
    this.lowestInverseC = lowestInverseC;
  }

  /**
   * mV of a couple whose hot junction is at a temperature.
   *
   * @param temperatureC °C from {@link #lowestC} to {@link #highestC}
   * @throws OutOfRange outside that span, and for NaN
   */
  public double emfMv(double temperatureC) {
    ReferenceFunction forward = curves().forward();
    requireC(temperatureC, forward);
    return forward.emfMv(temperatureC);
  }

  /**
   * °C of the hot junction that gives an emf.
   *
   * @param emfMv mV from {@link #lowestEmfMv} to {@link #highestEmfMv}
   * @throws OutOfRange outside that span, and for NaN
   */
  public double temperatureC(double emfMv) {
    Curves all = curves();
    if (!(emfMv >= all.lowMv() - ROUNDING_MV && emfMv <= all.highMv() + ROUNDING_MV)) {
      throw new OutOfRange(this, emfMv, "mV", all.lowMv(), all.highMv());
    }
    if (this == B && emfMv < all.forward().emfMv(B_FLAT_BELOW_C)) {
      return InverseTable.solve(all.forward(), emfMv, 150, lowestInverseC, B_FLAT_BELOW_C);
    }
    return (emfMv < 0 ? all.belowZero() : all.aboveZero()).temperatureC(emfMv);
  }

  /**
   * Seebeck coefficient, µV/°C: the slope of the reference function.
   *
   * @param temperatureC °C from {@link #lowestC} to {@link #highestC}
   * @throws OutOfRange outside that span, and for NaN
   */
  public double seebeckUvPerC(double temperatureC) {
    ReferenceFunction forward = curves().forward();
    requireC(temperatureC, forward);
    return 1000 * forward.slopeMvPerC(temperatureC);
  }

  /** °C at which the published function begins. */
  public double lowestC() {
    return curves().forward().lowestC();
  }

  /** °C at which the published function ends. */
  public double highestC() {
    return curves().forward().highestC();
  }

  /** °C from which an emf can be turned into a temperature. */
  public double lowestInverseC() {
    return lowestInverseC;
  }

  /** mV from which an emf can be turned into a temperature. */
  public double lowestEmfMv() {
    return curves().lowMv();
  }

  /** mV up to which an emf can be turned into a temperature. */
  public double highestEmfMv() {
    return curves().highMv();
  }

  private void requireC(double temperatureC, ReferenceFunction forward) {
    if (!(temperatureC >= forward.lowestC() && temperatureC <= forward.highestC())) {
      throw new OutOfRange(this, temperatureC, "°C", forward.lowestC(), forward.highestC());
    }
  }

  /** A race makes the same curves twice and does no harm: a record is safe to publish. */
  private Curves curves() {
    Curves made = curves;
    if (made == null) {
      ReferenceFunction forward = CoefficientFile.forward(this);
      double highestC = forward.highestC();
      double tableFromC = this == B ? B_FLAT_BELOW_C : 0;
      InverseTable above = new InverseTable(forward, tableFromC, highestC);
      InverseTable below =
          lowestInverseC < 0 ? new InverseTable(forward, lowestInverseC, 0) : above;
      made =
          new Curves(forward, below, above, forward.emfMv(lowestInverseC), forward.emfMv(highestC));
      curves = made;
    }
    return made;
  }
}
