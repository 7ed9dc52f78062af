package org.climbwatch.thermocouple;

/**
 * Cold-junction compensation: emfs are added, never degrees, because the couple's slope at the
 * terminals is not its slope in the fire.
 */
public final class ColdJunction {
  private ColdJunction() {}

  /**
   * °C of the hot junction.
   *
   * @param emfMv mV measured between terminals
   * @param coldJunctionC °C of those terminals
   * @throws OutOfRange when either or their sum is outside the type's function
   */
  public static double hotJunctionC(ThermocoupleType type, double emfMv, double coldJunctionC) {
    return type.temperatureC(emfMv + type.emfMv(coldJunctionC));
  }

  /**
   * mV between terminals at one temperature when the hot junction is at another.
   *
   * @throws OutOfRange when either is outside the type's function
   */
  public static double emfMv(ThermocoupleType type, double hotJunctionC, double coldJunctionC) {
    return type.emfMv(hotJunctionC) - type.emfMv(coldJunctionC);
  }
}
