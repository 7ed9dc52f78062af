package org.climbwatch.source.spi;

import org.climbwatch.thermocouple.ThermocoupleType;

class Ads1118ContractTest extends SpiContract {
  Ads1118ContractTest() {
    super(new Ads1118(ThermocoupleType.K, Ads1118.Inputs.AIN0_AIN1, 256, 8), Ads1118Emulator::new);
  }
}
