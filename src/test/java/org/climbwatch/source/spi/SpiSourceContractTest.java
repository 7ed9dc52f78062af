package org.climbwatch.source.spi;

import org.climbwatch.thermocouple.ThermocoupleType;

class SpiSourceContractTest extends SpiContract {
  SpiSourceContractTest() {
    super(new Max31855(ThermocoupleType.K), nanoTime -> new Max31855Emulator());
  }
}
