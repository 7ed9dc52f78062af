package org.climbwatch.thermocouple;

/**
 * What stands between the fire and the number: wire, instrument, and what a calibration has found
 * of both together.
 *
 * @param type letter type of the couple
 * @param toleranceClass of the wire, as bought
 * @param errors of the instrument
 * @param correction found by calibration, to be added to every temperature
 * @see "JCGM 200:2012 (VIM), 3.10: measuring chain"
 */
public record MeasuringChain(
    ThermocoupleType type,
    ToleranceClass toleranceClass,
    ProbeErrors errors,
    Correction correction) {
  /** A chain that nobody has calibrated. */
  public MeasuringChain(ThermocoupleType type, ToleranceClass toleranceClass, ProbeErrors errors) {
    this(type, toleranceClass, errors, Correction.NONE);
  }

  /** The same chain with another correction. */
  public MeasuringChain with(Correction other) {
    return new MeasuringChain(type, toleranceClass, errors, other);
  }
}
