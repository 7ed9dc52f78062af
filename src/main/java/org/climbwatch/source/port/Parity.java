package org.climbwatch.source.port;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The check bit of each byte on a line. */
public enum Parity {
  NONE(SerialPort.NO_PARITY),
  EVEN(SerialPort.EVEN_PARITY),
  ODD(SerialPort.ODD_PARITY);

  final int code;

  Parity(int code) {
    this.code = code;
  }

  /** As settings write it, for instance {@code even}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static List<String> words() {
    return Arrays.stream(values()).map(Parity::word).toList();
  }

  public static Parity ofWord(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
