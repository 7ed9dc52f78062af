package org.climbwatch.source.port;

import java.nio.file.Path;
import java.util.List;

/**
 * How a serial port is opened: always eight data bits, no flow control.
 *
 * @param port absolute path, for instance a name under {@code /dev/serial/by-id/} or {@code
 *     /dev/ttyUSB0}; a link is followed anew at each opening
 * @param baud bits a second, one of {@link #BAUDS}
 * @param stopBits 1 or 2
 * @param resetOnOpen whether DTR and RTS are left raised on opening; false lowers both
 */
public record PortSettings(
    String port, int baud, Parity parity, int stopBits, boolean resetOnOpen) {
  public static final List<Integer> BAUDS =
      List.of(1200, 2400, 4800, 9600, 19_200, 38_400, 57_600, 115_200, 230_400, 460_800, 921_600);

  public PortSettings {
    if (port.indexOf('\0') >= 0 || !Path.of(port).isAbsolute()) {
      throw new IllegalArgumentException(
          "port must be a whole path such as /dev/serial/by-id/... or /dev/ttyUSB0, was \""
              + port.replace('\0', '?')
              + "\"");
    }
    if (!BAUDS.contains(baud)) {
      throw new IllegalArgumentException("baud must be one of " + BAUDS + ", was " + baud);
    }
    if (stopBits != 1 && stopBits != 2) {
      throw new IllegalArgumentException("stopBits must be 1 or 2, was " + stopBits);
    }
  }

  /** For people, for instance {@code /dev/ttyUSB0 at 9600 baud 8E1}. */
  public String describe() {
    return port + " at " + baud + " baud 8" + parity.name().charAt(0) + stopBits;
  }
}
