package org.climbwatch.app.config;

import java.nio.file.Path;
import java.time.Duration;

/** Where the probe's readings come from. */
public sealed interface ProbeSource {
  /** A serial line that speaks the one-line text format. */
  record Serial(String port, int baud, Duration silence, boolean clearDtr) implements ProbeSource {}

  /** A MAX31855 on an SPI bus. */
  record Spi(int bus, int chipSelect) implements ProbeSource {}

  /** The kiln model. */
  record Model(String firing, long seed, String fault, int looks, double speed)
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
