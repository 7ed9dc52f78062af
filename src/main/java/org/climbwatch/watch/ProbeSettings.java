package org.climbwatch.watch;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.Budget;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;

/**
 * What the core needs to know of a probe.
 *
 * @param name as configured
 * @param chain wire, instrument and calibration
 * @param compared whether it should read about what the others read; not so in a flue
 * @param limitC °C that wire and sheath may be used to, 50 to 1800
 */
public record ProbeSettings(
    String name, MeasuringChain chain, boolean compared, OptionalDouble limitC) {
  /** A probe of an instrument that answers in degrees, without steps; never calibrated. */
  public ProbeSettings(
      String name,
      ThermocoupleType type,
      ToleranceClass toleranceClass,
      double amplifierErrorC,
      double coldJunctionErrorC,
      boolean compared,
      OptionalDouble limitC) {
    this(
        name,
        new MeasuringChain(
            type, toleranceClass, ProbeErrors.inDegrees(amplifierErrorC, coldJunctionErrorC)),
        compared,
        limitC);
  }

  /** The same without a limit of its own, compared with others. */
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
    double limit = limitC.orElse(50);
    if (!(limit >= 50 && limit <= 1800)) {
      throw new IllegalArgumentException("limitC must be 50 to 1800, was " + limit);
    }
  }

  /** The same with another correction. */
  public ProbeSettings with(Correction correction) {
    return new ProbeSettings(name, chain.with(correction), compared, limitC);
  }

  /**
   * The itemised uncertainty of a reading of this probe.
   *
   * @return empty for a reading that has no temperature
   */
  public Optional<Budget> budget(Reading reading) {
    return new Judge(this).budget(reading);
  }

  /** Letter type of the couple. */
  public ThermocoupleType type() {
    return chain.type();
  }

  /** Of the wire, as bought. */
  public ToleranceClass toleranceClass() {
    return chain.toleranceClass();
  }
}
