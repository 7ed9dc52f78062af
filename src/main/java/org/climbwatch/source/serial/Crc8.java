package org.climbwatch.source.serial;

/**
 * The eight-bit cyclic redundancy check with polynomial x^8 + x^2 + x + 1 (07 hex), start 0, bits
 * high first, no final inversion: the packet error code of the System Management Bus Specification.
 * Its published check value, over the ASCII digits 123456789, is F4 hex.
 *
 * <p>It finds every error that lies within eight neighbouring bits, so every single wrong byte. It
 * does not always find a lost byte: the format carries the length for that.
 */
final class Crc8 {
  private static final int POLYNOMIAL = 0x07;

  private Crc8() {}

  /** The check, 0 to 255, of the first {@code length} bytes. */
  static int of(byte[] bytes, int length) {
    int check = 0;
    for (int i = 0; i < length; i++) {
      check ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        boolean carry = (check & 0x80) != 0;
        check = (check << 1) & 0xFF;
        check = carry ? check ^ POLYNOMIAL : check;
      }
    }
    return check;
  }
}
