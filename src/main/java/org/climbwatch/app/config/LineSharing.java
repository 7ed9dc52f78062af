package org.climbwatch.app.config;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.climbwatch.source.port.PortSettings;

/** What probes that name the same serial port must agree on. */
final class LineSharing {
  private LineSharing() {}

  /** Notes what keeps a probe from sharing a port with those before it. */
  static void check(Section table, ProbeSource source, List<ProbeSource> before) {
    Optional<Path> port = port(source);
    for (ProbeSource other : before) {
      if (port.isEmpty() || !port.equals(port(other))) {
        continue;
      }
      Section lineTable = table.section(word(source));
      String shown = port.get().toString();
      if (line(source).isEmpty() || other.getClass() != source.getClass()) {
        lineTable.wrong(
            "port",
            shown,
            "is the port of another probe",
            "only probes that are all modbus, or all scpi, can share one");
      } else if (!line(source).equals(line(other))) {
        lineTable.wrong(
            "port",
            shown,
            "is opened otherwise by another probe: " + line(other).orElseThrow().describe(),
            "write baud, parity and stop_bits alike for both");
      }
    }
  }

  private static Optional<Path> port(ProbeSource source) {
    Optional<String> name =
        source instanceof ProbeSource.Serial serial
            ? Optional.of(serial.port())
            : line(source).map(PortSettings::port);
    return name.map(Path::of).map(Path::normalize).filter(path -> path.getNameCount() > 1);
  }

  /** The line of a source that can share it. */
  private static Optional<PortSettings> line(ProbeSource source) {
    if (source instanceof ProbeSource.Modbus modbus) {
      return Optional.of(modbus.settings().line());
    }
    return source instanceof ProbeSource.Scpi scpi
        ? Optional.of(scpi.settings().line())
        : Optional.empty();
  }

  private static String word(ProbeSource source) {
    if (source instanceof ProbeSource.Modbus) {
      return "modbus";
    }
    return source instanceof ProbeSource.Scpi ? "scpi" : "serial";
  }
}
