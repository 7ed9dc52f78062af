package org.climbwatch.source.modbus;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.locks.LockSupport;
import org.climbwatch.source.Source;
import org.climbwatch.source.SourceContract;
import org.climbwatch.source.port.SharedPorts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;

/** The contract over a real pseudo-terminal. */
class ModbusSourceContractIT extends SourceContract {
  @TempDir Path folder;
  private TransmitterEmulator emulator;

  @Override
  protected Source open() {
    emulator = TransmitterEmulator.start(folder.resolve("rs485"));
    ModbusSettings settings = ModbusSourceIT.emf(folder.resolve("rs485"));
    return ModbusSource.open(PROBE, settings, new SharedPorts());
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
        emulator.behaves();
        emulator.holds(ModbusSourceIT.UNIT, 4, 0);
        emulator.holdsFloat(ModbusSourceIT.UNIT, 0, emfMv);
        emulator.holds(ModbusSourceIT.UNIT, 2, (int) Math.round(coldJunctionC * 10));
      }

      @Override
      public void reportsOpenCircuit() {
        gives(0, 25);
        emulator.holds(ModbusSourceIT.UNIT, 4, 0x0005);
      }

      @Override
      public void fallsSilent() {
        emulator.fallsSilent();
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
