package org.climbwatch.source.modbus;

import java.util.Arrays;

/** Frames for tests, with a check of their own making, so that a mistake is not mirrored. */
final class RtuFrames {
  private RtuFrames() {}

  /** Those bytes with their check behind them. */
  static byte[] checked(int... bytes) {
    byte[] frame = new byte[bytes.length + 2];
    for (int i = 0; i < bytes.length; i++) {
      frame[i] = (byte) bytes[i];
    }
    int crc = crc(frame, bytes.length);
    frame[bytes.length] = (byte) crc;
    frame[bytes.length + 1] = (byte) (crc >> 8);
    return frame;
  }

  /** An answer that carries those registers. */
  static byte[] answer(int unit, int function, int... registers) {
    int[] bytes = new int[3 + 2 * registers.length];
    bytes[0] = unit;
    bytes[1] = function;
    bytes[2] = 2 * registers.length;
    for (int i = 0; i < registers.length; i++) {
      bytes[3 + 2 * i] = registers[i] >> 8 & 0xFF;
      bytes[4 + 2 * i] = registers[i] & 0xFF;
    }
    return checked(bytes);
  }

  /** An answer that refuses. */
  static byte[] exception(int unit, int function, int code) {
    return checked(unit, function | 0x80, code);
  }

  static byte[] joined(byte[]... parts) {
    byte[] all = new byte[0];
    for (byte[] part : parts) {
      int end = all.length;
      all = Arrays.copyOf(all, end + part.length);
      System.arraycopy(part, 0, all, end, part.length);
    }
    return all;
  }

  /**
   * The check as the standard's own steps do it, bit by bit (MODBUS over Serial Line V1.02, section
   * 6.2.2), where the program uses a library's table.
   */
  static int crc(byte[] bytes, int length) {
    int crc = 0xFFFF;
    for (int i = 0; i < length; i++) {
      crc ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 1 ? crc >> 1 ^ 0xA001 : crc >> 1;
      }
    }
    return crc;
  }
}
