package org.climbwatch.app.config;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.climbwatch.source.port.Parity;
import org.climbwatch.source.port.PortSettings;

/** The keys that tables of sources on a serial line have in common. */
final class PortKeys {
  private static final int DEFAULT_BAUD = 9600;

  private final Section probe;
  private final Section table;
  private final String name;

  /**
   * @param name of the table, under which a missing port is complained of
   */
  PortKeys(Section probe, Section table, String name) {
    this.probe = probe;
    this.table = table;
    this.name = name;
  }

  /** The device's whole path, or blank when that is not what was written. */
  String port() {
    Optional<Path> port = table.path("port");
    if (!table.has("port")) {
      probe.mistake(
          name, "has no port; name the device, for example port = \"/dev/serial/by-id/usb-...\"");
    } else if (port.isPresent() && !port.get().isAbsolute()) {
      table.wrong(
          "port",
          port.get().toString(),
          "is no whole path",
          "write it from /dev/ on, for example \"/dev/ttyUSB0\"");
    }
    return port.map(Path::toString).orElse("");
  }

  /** How the line is opened; after a mistake some port, for the file is refused anyway. */
  PortSettings line() {
    String port = port();
    int baud = (int) table.oneOf("baud", DEFAULT_BAUD, PortSettings.BAUDS);
    Parity parity = Parity.ofWord(table.choice("parity", Parity.NONE.word(), Parity.words()));
    int stopBits = (int) table.oneOf("stop_bits", 1, List.of(1, 2));
    String known = Path.of(port).isAbsolute() ? port : "/";
    return new PortSettings(known, baud, parity, stopBits, true);
  }

  /** A length of time. */
  static Duration seconds(
      Section table, String key, Duration otherwise, double least, double most) {
    double seconds = table.number(key, otherwise.toMillis() / 1000.0, least, most);
    return Duration.ofMillis(Math.round(seconds * 1000));
  }
}
