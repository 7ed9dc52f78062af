package org.climbwatch.source.modbus;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Which of two registers holds the upper half of a number of 32 bits. The standard leaves it open
 * and makers differ; within a register the upper byte always comes first (MODBUS Application
 * Protocol V1.1b3, section 4.2).
 */
public enum WordOrder {
  /** The upper half stands in the register with the lower address. */
  HIGH_FIRST,
  /** The lower half stands in the register with the lower address. */
  LOW_FIRST;

  /** As settings write it, for instance {@code high_first}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static List<String> words() {
    return Arrays.stream(values()).map(WordOrder::word).toList();
  }

  public static WordOrder ofWord(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
