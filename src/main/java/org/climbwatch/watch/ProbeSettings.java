package org.climbwatch.watch;

import java.util.OptionalDouble;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;

/**
 * What the core needs to know of a probe.
 *
 * @param name as configured
 * @param type letter type of the couple
 * @param toleranceClass of the wire, as bought
 * @param amplifierErrorC °C, limit of error of the amplifier
 * @param coldJunctionErrorC °C, limit of error of the cold junction sensor
 * @param compared whether it should read about what the others read; not so in a flue
 * @param limitC °C that wire and sheath may be used to, 50 to 1800
 */
public record ProbeSettings(
    String name,
    ThermocoupleType type,
    ToleranceClass toleranceClass,
    double amplifierErrorC,
    double coldJunctionErrorC,
    boolean compared,
    OptionalDouble limitC) {
  /** A probe without a limit of its own that is compared with others. */
  public ProbeSettings(
      String name,
      ThermocoupleType type,
      ToleranceClass toleranceClass,
      double amplifierErrorC,
      double coldJunctionErrorC) {
    this(
        name,
        type,
        toleranceClass,
        amplifierErrorC,
        coldJunctionErrorC,
        true,
        OptionalDouble.empty());
  }

  public ProbeSettings {
    require(amplifierErrorC, "amplifierErrorC");
    require(coldJunctionErrorC, "coldJunctionErrorC");
    double limit = limitC.orElse(50);
    if (!(limit >= 50 && limit <= 1800)) {
      throw new IllegalArgumentException("limitC must be 50 to 1800, was " + limit);
    }
  }

  private static void require(double value, String name) {
    if (!(value >= 0 && value <= 50)) {
      throw new IllegalArgumentException(name + " must be 0 to 50, was " + value);
    }
  }
}
