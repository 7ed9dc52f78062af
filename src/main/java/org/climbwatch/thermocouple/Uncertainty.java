package org.climbwatch.thermocouple;

/**
 * How uncertain a temperature is: limits of error of wire, amplifier and cold junction, each taken
 * as rectangular (divided by the root of 3), combined by the root of the sum of squares, and
 * expanded with k = 2.
 *
 * <p>Not in it: the amplifier's steps (0.25 °C at most add less than 0.02 °C to any budget above 1
 * °C), what a used couple has drifted, how well the probe's tip shares the heat of the ware.
 *
 * @see "JCGM 100:2008 (GUM), 4.3.7, 5.1.2 and 6.2.1"
 */
public final class Uncertainty {
  private static final double COVERAGE = 2;

  private Uncertainty() {}

  /**
   * Expanded uncertainty (k = 2), °C.
   *
   * <p>The cold junction counts through the ratio of slopes S(cold) / S(hot), because its error is
   * made in degrees at one end of the couple and read in degrees at the other.
   *
   * <p>Where the tolerance class is not published its formula is continued: an estimate, not a
   * limit that anyone warrants, see {@link #classHolds}.
   *
   * @param temperatureC °C of the hot junction
   * @param coldJunctionC °C of the terminals
   * @param amplifierErrorC °C, limit of error of the amplifier at the hot junction, 0 or more
   * @param coldJunctionErrorC °C, limit of error of the cold junction sensor, 0 or more
   * @throws OutOfRange when a temperature is outside the type's reference function
   */
  public static double expandedC(
      ThermocoupleType type,
      ToleranceClass toleranceClass,
      double temperatureC,
      double coldJunctionC,
      double amplifierErrorC,
      double coldJunctionErrorC) {
    double slopes = type.seebeckUvPerC(coldJunctionC) / type.seebeckUvPerC(temperatureC);
    double wireC = ToleranceLimits.continuedC(toleranceClass, type, temperatureC);
    double coldC = coldJunctionErrorC * slopes;
    double squares = wireC * wireC + amplifierErrorC * amplifierErrorC + coldC * coldC;
    return COVERAGE * Math.sqrt(squares / 3);
  }

  /** Whether the tolerance class is published for that type at that temperature. */
  public static boolean classHolds(
      ThermocoupleType type, ToleranceClass toleranceClass, double temperatureC) {
    return toleranceClass.holds(type, temperatureC);
  }
}
