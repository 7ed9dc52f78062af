package org.climbwatch.source.modbus;

/**
 * A number in a unit's registers.
 *
 * @param address as it goes over the line, counted from 0, of the first register; 0 to 65535. A
 *     manual that counts from 1, or writes 30001 or 40001, means 0 here
 * @param scale what the number is multiplied by; not 0
 */
public record Register(int address, RegisterFormat format, WordOrder order, double scale) {
  static final int MOST_ADDRESS = 65_535;

  public Register {
    if (address < 0 || address + format.registers() - 1 > MOST_ADDRESS) {
      throw new IllegalArgumentException("address must be 0 to 65535, was " + address);
    }
    if (!Double.isFinite(scale) || scale == 0) {
      throw new IllegalArgumentException("scale must be finite and not 0, was " + scale);
    }
  }

  /** The bare number, before the scale. */
  double bare(byte[] bytes) {
    return format.value(bytes, order);
  }
}
