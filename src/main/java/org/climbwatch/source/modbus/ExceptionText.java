package org.climbwatch.source.modbus;

import com.digitalpetri.modbus.ExceptionCode;
import java.util.Locale;

/** What a unit's exception code says, and what to do (MODBUS Application Protocol, section 7). */
final class ExceptionText {
  private ExceptionText() {}

  /** For instance {@code exception 02, illegal data address: ...}. */
  static String of(int code) {
    String name =
        ExceptionCode.from(code)
            .map(known -> known.name().toLowerCase(Locale.ROOT).replace('_', ' '))
            .orElse("not in the standard");
    return String.format(Locale.ROOT, "exception %02X, %s: %s", code, name, advice(code));
  }

  private static String advice(int code) {
    return switch (code) {
      case 0x01 -> "try the other function, 3 or 4";
      case 0x02 -> "look the register up in the manual and count from 0";
      case 0x03 -> "look the format up in the manual";
      case 0x04, 0x08 -> "the transmitter reports its own failure; power it off and on";
      case 0x05, 0x06 -> "the transmitter is busy; wait";
      case 0x0A, 0x0B -> "the gateway does not reach the unit; check its wires and number";
      default -> "see the transmitter's manual";
    };
  }
}
