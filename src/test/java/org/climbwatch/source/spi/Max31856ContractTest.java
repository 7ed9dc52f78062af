package org.climbwatch.source.spi;

import org.climbwatch.thermocouple.ThermocoupleType;

class Max31856ContractTest extends SpiContract {
  Max31856ContractTest() {
    super(
        new Max31856(ThermocoupleType.K, Max31856.Mode.TEMPERATURE, 1, 50, false, 0),
        Max31856Emulator::new);
  }
}
