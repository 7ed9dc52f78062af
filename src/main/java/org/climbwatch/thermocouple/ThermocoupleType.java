package org.climbwatch.thermocouple;

/**
 * The letter-designated thermocouples by their ITS-90 reference functions, reference junction at 0
 * °C.
 *
 * <p>There and back agrees with the reference function within 1e-5 °C wherever the inverse is
 * defined, for Type K within 1e-7 °C.
 *
 * @see "NIST Monograph 175 (1993); NIST SRD 60; ASTM E230; IEC 60584-1"
 */
public enum ThermocoupleType {
  /**
   * The emf falls to -0.0026 mV at 21 °C and is back at 0 only at 42.132 °C: below, one emf means
   * two temperatures, so the inverse begins just above.
   */
  B(42.14),
  E(-270),
  J(-210),
  K(-270),
  N(-270),
  R(-50),
  S(-50),
  T(-270);

  private final double lowestInverseC;
  private Curves curves;

  /** Made when a type is first used, up to 96 KiB: a daemon needs one of eight. */
  private record Curves(ReferenceFunction forward, InverseFunction inverse) {}

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
    return forwardAt(temperatureC).emfMv(temperatureC);
  }

  /**
   * °C of the hot junction that gives an emf.
   *
   * @param emfMv mV from {@link #lowestEmfMv} to {@link #highestEmfMv}; an emf beyond an end by no
   *     more than half a step of the record (0.05 µV) is taken as that end
   * @return °C from {@link #lowestInverseC} to {@link #highestC}
   * @throws OutOfRange outside that span, and for NaN
   */
  public double temperatureC(double emfMv) {
    return curves().inverse().temperatureC(emfMv);
  }

  /**
   * Seebeck coefficient, µV/°C: the slope of the reference function.
   *
   * @param temperatureC °C from {@link #lowestC} to {@link #highestC}
   * @throws OutOfRange outside that span, and for NaN
   */
  public double seebeckUvPerC(double temperatureC) {
    return 1000 * forwardAt(temperatureC).slopeMvPerC(temperatureC);
  }

  /** °C at which the published function begins. */
  public double lowestC() {
    return curves().forward().lowestC();
  }

  /** °C at which the published function ends, and the inverse with it. */
  public double highestC() {
    return curves().forward().highestC();
  }

  /** °C from which an emf can be turned into a temperature. */
  public double lowestInverseC() {
    return lowestInverseC;
  }

  /** mV from which an emf can be turned into a temperature. */
  public double lowestEmfMv() {
    return curves().inverse().lowestMv();
  }

  /** mV up to which an emf can be turned into a temperature. */
  public double highestEmfMv() {
    return curves().inverse().highestMv();
  }

  private ReferenceFunction forwardAt(double temperatureC) {
    ReferenceFunction forward = curves().forward();
    if (!(temperatureC >= forward.lowestC() && temperatureC <= forward.highestC())) {
      throw OutOfRange.temperature(this, temperatureC, forward.lowestC(), forward.highestC());
    }
    return forward;
  }

  /** A race makes the same curves twice and does no harm: a record is safe to publish. */
  private Curves curves() {
    Curves made = curves;
    if (made == null) {
      ReferenceFunction forward = CoefficientFile.forward(this);
      made = new Curves(forward, new InverseFunction(this, forward));
      curves = made;
    }
    return made;
  }
}
