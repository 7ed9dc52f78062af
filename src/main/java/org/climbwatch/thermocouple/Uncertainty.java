package org.climbwatch.thermocouple;

/**
 * How uncertain a temperature is: limits of error of couple, amplifier and cold junction taken as
 * rectangular, combined by the root of the sum of squares, and expanded with k = 2.
 *
 * <p>Holds for new wire: drift of a used couple is not in it.
 *
 * @see "JCGM 100:2008 (GUM), 4.3.7 and 6.2"
 */
public final class Uncertainty {
  private static final double COVERAGE = 2;

  private Uncertainty() {}

  /**
   * Expanded uncertainty, °C.
   *
   * <p>Where the tolerance class no longer holds its formula is continued: an estimate, see {@link
   * #classHolds}.
   *
   * @param amplifierErrorC °C, limit of error of the amplifier at the hot junction
   * @param coldJunctionErrorC °C, limit of error of the cold junction sensor
   */
  public static double expandedC(
      ThermocoupleType type,
      ToleranceClass toleranceClass,
      double temperatureC,
      double coldJunctionC,
      double amplifierErrorC,
      double coldJunctionErrorC) {
    double wireC = toleranceClass.continuedLimitC(type, temperatureC);
    double slopes = type.seebeckUvPerC(coldJunctionC) / type.seebeckUvPerC(temperatureC);
    double coldC = coldJunctionErrorC * slopes;
    double squares = wireC * wireC + amplifierErrorC * amplifierErrorC + coldC * coldC;
    return COVERAGE * Math.sqrt(squares / 3);
  }

  /** Whether the tolerance class is published for that temperature. */
  public static boolean classHolds(
      ThermocoupleType type, ToleranceClass toleranceClass, double temperatureC) {
    return toleranceClass.limitC(type, temperatureC).isPresent();
  }
}
