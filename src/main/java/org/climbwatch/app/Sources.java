package org.climbwatch.app;

import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.config.ProbeSource;
import org.climbwatch.source.Source;
import org.climbwatch.source.recorded.RecordedSource;
import org.climbwatch.source.serial.SerialSettings;
import org.climbwatch.source.serial.SerialSource;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.source.simulated.FiringKind;
import org.climbwatch.source.simulated.SimulatedSource;
import org.climbwatch.source.simulated.SimulationSettings;
import org.climbwatch.source.spi.SpiSource;

/** Opens the source that the configuration names. */
final class Sources {
  private Sources() {}

  /**
   * @param originMillis kiln time at which a model or a recording begins
   */
  static Source open(Configuration configuration, long originMillis) {
    String probe = configuration.watch().probe().name();
    ProbeSource source = configuration.source();
    if (source instanceof ProbeSource.Serial serial) {
      return new SerialSource(
          probe,
          new SerialSettings(serial.port(), serial.baud(), serial.silence(), !serial.clearDtr()));
    }
    if (source instanceof ProbeSource.Spi spi) {
      return SpiSource.max31855(
          probe, configuration.watch().probe().type(), spi.bus(), spi.chipSelect());
    }
    if (source instanceof ProbeSource.Recording recording) {
      return new RecordedSource(probe, recording.file(), originMillis);
    }
    return new SimulatedSource(probe, simulation((ProbeSource.Model) source), originMillis);
  }

  static SimulationSettings simulation(ProbeSource.Model model) {
    return new SimulationSettings(
        FiringKind.ofWord(model.firing()), model.seed(), FaultKind.ofWord(model.fault()));
  }
}
