package org.climbwatch.thermocouple;

/**
 * How uncertain a temperature is: the standard uncertainties of all sources, combined by the root
 * of the sum of squares and expanded with k = 2.
 *
 * <p>Not in it: what a used couple has drifted (unless an allowance is stated), how well the
 * probe's tip shares the heat of the ware. {@link Budget} itemises the same sum.
 *
 * @see "JCGM 100:2008 (GUM), 5.1.2 and 6.2.1"
 */
public final class Uncertainty {
  /** k: about 95 % where no single source rules. */
  static final double COVERAGE = 2;

  /** Once, because {@code values()} copies. */
  private static final UncertaintySource[] SOURCES = UncertaintySource.values();

  private Uncertainty() {}

  /**
   * Expanded uncertainty (k = 2) of one look, °C, without noise.
   *
   * @throws OutOfRange as {@link #expandedC(MeasuringChain, double, double, double, int)} does
   */
  public static double expandedC(MeasuringChain chain, double readC, double coldJunctionC) {
    return expandedC(chain, readC, coldJunctionC, 0, 1);
  }

  /**
   * Expanded uncertainty (k = 2), °C. Allocates nothing.
   *
   * <p>The cold junction counts through the ratio of slopes S(cold) / S(hot), because its error is
   * made in degrees at one end of the couple and read in degrees at the other.
   *
   * <p>Where the tolerance class is not published its formula is continued: an estimate, not a
   * limit that anyone warrants, see {@link #classHolds}.
   *
   * @param readC °C of the hot junction before correction
   * @param coldJunctionC °C of the terminals
   * @param spreadC °C, standard deviation of the single looks that the reading was made of
   * @param samples how many those were, 1 or more
   * @throws OutOfRange when a temperature is outside the type's reference function
   * @throws IllegalArgumentException for a negative spread or less than one sample
   */
  public static double expandedC(
      MeasuringChain chain, double readC, double coldJunctionC, double spreadC, int samples) {
    requireSamples(spreadC, samples);
    ThermocoupleType type = chain.type();
    double hotUvPerC = type.seebeckUvPerC(readC);
    double coldUvPerC = type.seebeckUvPerC(coldJunctionC);
    // only the gain asks for it, and it costs as much as both slopes
    double emfMv =
        chain.errors().gainPpm() > 0 ? ColdJunction.emfMv(type, readC, coldJunctionC) : 0;
    double squares = 0;
    for (UncertaintySource source : SOURCES) {
      double value = source.value(chain, readC, spreadC);
      if (value != 0) {
        double sensitivity = source.sensitivity(hotUvPerC, coldUvPerC, emfMv);
        double standardC = value / source.divisor(samples) * sensitivity;
        squares += standardC * standardC;
      }
    }
    return COVERAGE * Math.sqrt(squares);
  }

  static void requireSamples(double spreadC, int samples) {
    if (!(spreadC >= 0 && samples >= 1)) {
      throw new IllegalArgumentException(
          "a spread of " + spreadC + " °C over " + samples + " samples; allowed: 0 up, 1 up");
    }
  }

  /** Whether the tolerance class is published for that type at that temperature. */
  public static boolean classHolds(
      ThermocoupleType type, ToleranceClass toleranceClass, double temperatureC) {
    return toleranceClass.holds(type, temperatureC);
  }
}
