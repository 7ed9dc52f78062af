package org.climbwatch.source.spi;

/**
 * A chip at the level of its pins: what it answers to what is clocked in, written from its data
 * sheet and not from the code under test. A step of dither moves each conversion, as noise does.
 */
public interface ChipEmulator {
  /** One transfer under one chip select. */
  byte[] transfer(byte[] out);

  /** The couple between its terminals, mV, and the temperature of those, °C. */
  void senses(double emfMv, double coldJunctionC);

  /** The couple's wire is broken. */
  void losesCouple();
}
