package org.climbwatch.source.scpi;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.locks.LockSupport;
import org.climbwatch.source.Source;
import org.climbwatch.source.SourceContract;
import org.climbwatch.source.port.Parity;
import org.climbwatch.source.port.PortSettings;
import org.climbwatch.source.port.SharedPorts;
import org.climbwatch.source.scpi.ScpiSettings.ColdJunctionFrom;
import org.climbwatch.source.scpi.ScpiSettings.Meaning;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** The contract over a real pseudo-terminal, with a voltmeter that has a terminal sensor. */
class ScpiSourceContractIT extends SourceContract {
  @TempDir Path folder;
  private InstrumentEmulator emulator;

  @Override
  protected Source open() {
    Path port = folder.resolve("rs232");
    emulator = InstrumentEmulator.start(port);
    emulator.fallsSilent(true);
    ScpiSettings settings =
        new ScpiSettings(
            new PortSettings(port.toString(), 9600, Parity.NONE, 1, true),
            List.of(),
            "MEAS:VOLT:DC?",
            Meaning.EMF_V,
            new ColdJunctionFrom(Optional.of("MEAS:TEMP:RTD?"), OptionalDouble.empty()),
            true,
            Duration.ofMillis(100),
            Duration.ofMillis(300),
            Duration.ofSeconds(2));
    return ScpiSource.open(PROBE, settings, new SharedPorts());
  }

  @AfterEach
  void unplugForGood() {
    emulator.close();
  }

  @Override
  protected void pass() {
    LockSupport.parkNanos(Duration.ofMillis(20).toNanos());
  }

  @Override
  protected Device device() {
    return new Device() {
      @Override
      public void gives(double emfMv, double coldJunctionC) {
        emulator.answers("MEAS:VOLT:DC?", String.format(Locale.ROOT, "%+.8E", emfMv / 1000));
        emulator.answers("MEAS:TEMP:RTD?", String.format(Locale.ROOT, "%+.4E", coldJunctionC));
        emulator.fallsSilent(false);
      }

      @Override
      public void reportsOpenCircuit() {
        gives(0, 25);
        emulator.answers("MEAS:VOLT:DC?", "+9.90000000E+37");
      }

      @Override
      public void fallsSilent() {
        emulator.fallsSilent(true);
      }

      @Override
      public void unplug() {
        emulator.line().unplug();
      }

      @Override
      public void replug() {
        emulator.line().plugIn();
      }
    };
  }
}
