package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A machine that leaves the reading thread lying between its look at the clock and the transfer.
 */
class BusyMachineTest {
  private long nanos;

  @ParameterizedTest
  @ValueSource(ints = {8, 32, 128})
  void noResultOfTheSensorIsTakenForTheCouplesOrTheOtherWayRound(int samplesPerSecond) {
    Ads1118Emulator emulator = new Ads1118Emulator(() -> nanos);
    emulator.senses(40.28, 25);
    Chip chip = new Ads1118(ThermocoupleType.K, Ads1118.Inputs.AIN0_AIN1, 256, samplesPerSecond);
    Random lain = new Random(7);
    SpiLink link =
        new SpiLink() {
          @Override
          public void transfer(byte[] out, byte[] in) {
            nanos += lain.nextInt(4) == 0 ? (long) (lain.nextDouble() * 300e6) : 0;
            byte[] answer = emulator.transfer(out);
            System.arraycopy(answer, 0, in, 0, answer.length);
          }

          @Override
          public void close() {}
        };
    SpiSettings settings = new SpiSettings(0, 0, SpiSettings.DEFAULT_CLOCK_HZ, chip);
    SpiSource source = new SpiSource("upper", settings, () -> link, () -> nanos);

    int good = 0;
    for (int i = 0; i < 2000; i++) {
      Optional<Reading> reading = source.read(new Moment(0, i));
      nanos += 20_000_000L;
      if (reading.isPresent()) {
        assertThat(reading.get()).isInstanceOf(Reading.Emf.class);
        Reading.Emf emf = (Reading.Emf) reading.get();
        assertThat(emf.emfMv()).isCloseTo(40.28, within(0.02));
        assertThat(emf.coldJunctionC()).isCloseTo(25, within(0.05));
        good++;
      }
    }
    assertThat(good).isGreaterThan(100);
  }
}
