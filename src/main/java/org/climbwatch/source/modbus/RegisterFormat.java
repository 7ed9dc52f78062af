package org.climbwatch.source.modbus;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** How a number lies in registers of 16 bits. */
public enum RegisterFormat {
  INT16(1),
  UINT16(1),
  INT32(2),
  /** IEEE 754 binary32. */
  FLOAT32(2);

  private final int registers;

  RegisterFormat(int registers) {
    this.registers = registers;
  }

  /** How many registers a number takes, 1 or 2. */
  public int registers() {
    return registers;
  }

  /**
   * The number in an answer.
   *
   * @param bytes as they came, two for each register, upper byte first
   * @param order for formats of two registers
   * @return for {@link #FLOAT32} perhaps not finite
   */
  public double value(byte[] bytes, WordOrder order) {
    return switch (this) {
      case INT16 -> (short) word(bytes, 0);
      case UINT16 -> word(bytes, 0);
      case INT32 -> bits(bytes, order);
      case FLOAT32 -> Float.intBitsToFloat(bits(bytes, order));
    };
  }

  private static int bits(byte[] bytes, WordOrder order) {
    int first = word(bytes, 0);
    int second = word(bytes, 1);
    return order == WordOrder.HIGH_FIRST ? first << 16 | second : second << 16 | first;
  }

  private static int word(byte[] bytes, int register) {
    return (bytes[2 * register] & 0xFF) << 8 | bytes[2 * register + 1] & 0xFF;
  }

  /** As settings write it, for instance {@code float32}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static List<String> words() {
    return Arrays.stream(values()).map(RegisterFormat::word).toList();
  }

  public static RegisterFormat ofWord(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
