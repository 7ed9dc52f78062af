package org.climbwatch.app.config;

import java.nio.file.Path;
import java.time.Duration;
import org.climbwatch.source.modbus.ModbusSettings;
import org.climbwatch.source.scpi.ScpiSettings;
import org.climbwatch.source.spi.SpiSettings;

/** Where the probe's readings come from. */
public sealed interface ProbeSource {
  /** A serial line that speaks the one-line text format. */
  record Serial(String port, int baud, Duration silence, boolean clearDtr) implements ProbeSource {}

  /** An amplifier on an SPI bus. */
  record Spi(SpiSettings settings) implements ProbeSource {}

  /** A transmitter that speaks Modbus RTU. */
  record Modbus(ModbusSettings settings) implements ProbeSource {}

  /** An instrument that speaks SCPI on a serial line. */
  record Scpi(ScpiSettings settings) implements ProbeSource {}

  /** The kiln model. */
  record Model(String firing, long seed, String fault, String place, int looks, double speed)
      implements ProbeSource {}

  /** A recording played back. */
  record Recording(Path file, double speed) implements ProbeSource {}

  /** How many times faster than real time kiln time runs. */
  default double speed() {
    if (this instanceof Model model) {
      return model.speed();
    }
    return this instanceof Recording recording ? recording.speed() : 1;
  }
}
