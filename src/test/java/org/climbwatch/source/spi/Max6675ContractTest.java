package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;

class Max6675ContractTest extends SpiContract {
  Max6675ContractTest() {
    super(new Max6675(25), Max6675Emulator::new);
  }

  /** This chip tells neither an emf nor a cold junction, so neither may be claimed. */
  @Override
  protected void assertSignal(Reading reading, double emfMv, double coldJunctionC) {
    Reading.Linearised own = (Reading.Linearised) reading;
    double trueC = ColdJunction.hotJunctionC(ThermocoupleType.K, emfMv, coldJunctionC);

    assertThat(own.temperatureC()).isCloseTo(trueC, within(0.2));
    assertThat(own.coldJunctionC()).isEmpty();
    assertThat(Reading.linearised(own.at(), PROBE, own.temperatureC(), own.coldJunctionC()))
        .isEqualTo(own);
  }
}
