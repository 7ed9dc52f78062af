package org.climbwatch.thermocouple;

/**
 * Limits of error of the instrument behind the wire, as its data sheet states them, each taken as
 * rectangular: up to so much either way, no part of it likelier than another. Nothing is stated by
 * 0.
 *
 * <p>An instrument that answers in degrees states {@code amplifierC} and {@code stepC}; one that
 * hands on the bare voltage, or whose straight line is undone, states offset, gain and step of that
 * voltage, which the couple's slope turns into degrees.
 *
 * @param amplifierC °C at the hot junction: gain, offset and linearity in one
 * @param offsetUv µV
 * @param gainPpm millionths of the measured voltage
 * @param coldJunctionC °C of the cold junction sensor
 * @param stepC °C between one answer and the next; half of it is the limit
 * @param stepUv µV between one answer and the next
 * @param driftC °C that a used couple is allowed to have drifted at the hot junction. No
 *     publication gives one for a couple of unknown past, so none is counted unless somebody states
 *     it
 */
public record ProbeErrors(
    double amplifierC,
    double offsetUv,
    double gainPpm,
    double coldJunctionC,
    double stepC,
    double stepUv,
    double driftC) {
  /** °C between one answer and the next of a MAX31855 (data sheet 19-5793) or MAX6675 (19-2235). */
  public static final double USUAL_STEP_C = 0.25;

  public static final double MOST_C = 50;
  public static final double MOST_OFFSET_UV = 1000;
  public static final double MOST_GAIN_PPM = 50_000;
  public static final double MOST_STEP_C = 10;
  public static final double MOST_STEP_UV = 200;

  /**
   * @throws IllegalArgumentException for a negative or an absurdly great value, and for NaN
   */
  public ProbeErrors {
    require(amplifierC, MOST_C, "amplifierErrorC");
    require(offsetUv, MOST_OFFSET_UV, "offsetErrorUv");
    require(gainPpm, MOST_GAIN_PPM, "gainErrorPpm");
    require(coldJunctionC, MOST_C, "coldJunctionErrorC");
    require(stepC, MOST_STEP_C, "stepC");
    require(stepUv, MOST_STEP_UV, "stepUv");
    require(driftC, MOST_C, "driftC");
  }

  /** An instrument that answers in degrees, without steps. */
  public static ProbeErrors inDegrees(double amplifierC, double coldJunctionC) {
    return new ProbeErrors(amplifierC, 0, 0, coldJunctionC, 0, 0, 0);
  }

  private static void require(double value, double most, String name) {
    if (!(value >= 0 && value <= most)) {
      throw new IllegalArgumentException(name + " must be 0 to " + most + ", was " + value);
    }
  }
}
