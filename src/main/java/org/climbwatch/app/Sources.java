package org.climbwatch.app;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.config.ProbeSource;
import org.climbwatch.source.PolledSource;
import org.climbwatch.source.Source;
import org.climbwatch.source.modbus.ModbusSource;
import org.climbwatch.source.port.SharedPorts;
import org.climbwatch.source.recorded.RecordedSource;
import org.climbwatch.source.scpi.ScpiSource;
import org.climbwatch.source.serial.SerialSettings;
import org.climbwatch.source.serial.SerialSource;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.source.simulated.FiringKind;
import org.climbwatch.source.simulated.Place;
import org.climbwatch.source.simulated.SimulatedSource;
import org.climbwatch.source.simulated.SimulationSettings;
import org.climbwatch.source.spi.SpiLink;
import org.climbwatch.source.spi.SpiSource;
import org.climbwatch.watch.ProbeSettings;

/** Opens the sources that the configuration names. */
final class Sources {
  private Sources() {}

  /**
   * Those of all probes, the followed one first.
   *
   * @param originMillis kiln time at which a model or a recording begins
   */
  static List<Source> open(Configuration configuration, long originMillis) {
    return open(configuration, originMillis, SpiLink.Buses.ofLinux());
  }

  /** The same with other buses for amplifiers on SPI. */
  static List<Source> open(Configuration configuration, long originMillis, SpiLink.Buses buses) {
    List<Source> sources = new ArrayList<>();
    for (int i = 0; i < configuration.sources().size(); i++) {
      ProbeSettings probe = configuration.watch().probes().get(i);
      ProbeSource of = configuration.sources().get(i);
      Source source =
          of instanceof ProbeSource.Spi spi
              ? new SpiSource(probe.name(), spi.settings(), buses)
              : open(probe, of, originMillis, configuration.burst());
      sources.add(asOftenAsItCan(probe, source, configuration));
    }
    return sources;
  }

  /**
   * Looks at what can be looked at before anything is written.
   *
   * @throws org.climbwatch.source.recorded.BadRecording when a recording cannot be played
   */
  static void refuseUnplayable(Configuration configuration) {
    for (ProbeSource source : configuration.sources()) {
      if (source instanceof ProbeSource.Recording recording) {
        new RecordedSource("", recording.file(), 0).close();
      }
    }
  }

  /**
   * A device that must be asked is asked often by a thread of its own, if that gives more looks.
   */
  private static Source asOftenAsItCan(
      ProbeSettings probe, Source source, Configuration configuration) {
    boolean asked = configuration.burst() && !source.pace().isZero();
    return asked && source.pace().compareTo(configuration.interval()) < 0
        ? new PolledSource(probe.name(), source, PolledSource.STUCK)
        : source;
  }

  private static Source open(
      ProbeSettings probe, ProbeSource source, long originMillis, boolean burst) {
    if (source instanceof ProbeSource.Serial serial) {
      return new SerialSource(
          probe.name(),
          new SerialSettings(serial.port(), serial.baud(), serial.silence(), !serial.clearDtr()),
          burst);
    }
    if (source instanceof ProbeSource.Modbus modbus) {
      return onSharedLine(ports -> ModbusSource.open(probe.name(), modbus.settings(), ports));
    }
    if (source instanceof ProbeSource.Scpi scpi) {
      return onSharedLine(ports -> ScpiSource.open(probe.name(), scpi.settings(), ports));
    }
    if (source instanceof ProbeSource.Recording recording) {
      return new RecordedSource(probe.name(), recording.file(), originMillis);
    }
    return new SimulatedSource(probe.name(), simulation((ProbeSource.Model) source), originMillis);
  }

  /** The lines of this process; a class of its own, so that it is loaded only when one is used. */
  private static final class Lines {
    static final SharedPorts PORTS = new SharedPorts();
  }

  private static Source onSharedLine(Function<SharedPorts, Source> opener) {
    try {
      return opener.apply(Lines.PORTS);
    } catch (IllegalArgumentException portInOtherUse) {
      throw new Refusal(portInOtherUse.getMessage());
    }
  }

  static SimulationSettings simulation(ProbeSource.Model model) {
    return new SimulationSettings(
        FiringKind.ofWord(model.firing()),
        model.seed(),
        FaultKind.ofWord(model.fault()),
        Place.ofWord(model.place()),
        model.looks());
  }
}
