package org.climbwatch.source.serial;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import org.climbwatch.source.Source;
import org.climbwatch.source.SourceContract;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** The contract over a real pseudo-terminal. */
class SerialSourceContractIT extends SourceContract {
  private static final Duration EVERY = Duration.ofMillis(20);

  @TempDir Path folder;
  private AmplifierEmulator emulator;

  @Override
  protected Source open() {
    emulator = AmplifierEmulator.start(folder.resolve("amplifier"));
    String port = folder.resolve("amplifier").toString();
    return new SerialSource(
        PROBE, new SerialSettings(port, 9600, SerialSourceIT.LEAST_SILENCE, true));
  }

  @AfterEach
  void unplugForGood() {
    emulator.close();
  }

  @Override
  protected void pass() {
    LockSupport.parkNanos(EVERY.toNanos());
  }

  @Override
  protected Device device() {
    return new Device() {
      @Override
      public void gives(double emfMv, double coldJunctionC) {
        emulator.sends(seconds -> emfMv * 1000, coldJunctionC, EVERY);
      }

      @Override
      public void reportsOpenCircuit() {
        emulator.sendsLines(seconds -> AmplifierEmulator.line("fault=open"), EVERY);
      }

      @Override
      public void fallsSilent() {
        emulator.fallsSilent();
      }

      @Override
      public void unplug() {
        emulator.unplug();
      }

      @Override
      public void replug() {
        emulator.replug();
      }
    };
  }
}
