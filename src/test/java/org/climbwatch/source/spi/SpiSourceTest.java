package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;

import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;

class SpiSourceTest {
  private static final SpiSettings SETTINGS =
      new SpiSettings(0, 1, SpiSettings.DEFAULT_CLOCK_HZ, new Max31855(ThermocoupleType.K));

  private final Max31855Emulator chip = new Max31855Emulator();
  private final ScriptedSpi spi = new ScriptedSpi(chip);
  private long nanos = Long.MAX_VALUE - 1000; // the clock of the machine may start anywhere
  private final SpiSource source = new SpiSource("top", SETTINGS, spi, () -> nanos);

  @Test
  void nothingIsOpenedBeforeTheFirstLook() {
    assertThat(spi.openings()).isZero();
    assertThat(source.describe()).contains("MAX31855 type K", "/dev/spidev0.1", "not looked at");
  }

  @Test
  void everyCallIsALookThroughTheSameLink() {
    for (int look = 0; look < 10; look++) {
      spi.gives(look, 25);
      assertThat(((Reading.Emf) look()).emfMv()).isBetween(look - 0.006, look + 0.006);
    }

    assertThat(spi.openings()).isEqualTo(1);
    assertThat(source.describe()).contains("reading", "10 received, 0 failed");
  }

  @Test
  void aChipThatNeedsNoSettlingIsReadAtTheFirstLook() {
    try (SpiSource ticking = new SpiSource("top", SETTINGS, spi, () -> nanos += 50_000)) {
      for (int look = 1; look <= 3; look++) {
        spi.gives(look, 25);
        assertThat(ticking.read(new Moment(0, look))).get().isInstanceOf(Reading.Emf.class);
      }
    }
  }

  @Test
  void aMissingDeviceIsTriedAgainOnlyEveryFewSeconds() {
    spi.unplug();
    for (int second = 0; second < 20; second++) {
      assertThat(look()).isEqualTo(faulty(Fault.DEVICE_GONE));
      pass(1);
    }

    assertThat(spi.openings()).isEqualTo(4);
    assertThat(source.describe()).contains("the device is gone", "is not there");
  }

  @Test
  void aFailedTransferIsNoAnswerAndTheLinkIsOpenedAfresh() {
    spi.gives(10, 25);
    look();
    spi.fallsSilent();
    assertThat(look()).isEqualTo(faulty(Fault.NO_ANSWER));
    spi.assertLetGo();

    spi.gives(10, 25);
    pass(4);
    assertThat(look()).isEqualTo(faulty(Fault.NO_ANSWER));
    pass(1);

    assertThat(look()).isInstanceOf(Reading.Emf.class);
    assertThat(spi.openings()).isEqualTo(2);
  }

  @Test
  void aDeviceThatVanishesIsNoAnswerFirstAndGoneOnceThatIsCertain() {
    spi.gives(10, 25);
    look();
    spi.unplug();
    assertThat(look()).isEqualTo(faulty(Fault.NO_ANSWER));
    pass(5);

    assertThat(look()).isEqualTo(faulty(Fault.DEVICE_GONE));
  }

  @Test
  void aDeadBusIsAWiringFaultAndTheLinkStays() {
    spi.carries();
    chip.givesFrame(0);
    assertThat(look()).isEqualTo(faulty(Fault.WIRING));
    chip.givesFrame(0xFFFFFFFF);
    assertThat(look()).isEqualTo(faulty(Fault.WIRING));

    assertThat(spi.openings()).isEqualTo(1);
    assertThat(source.describe()).contains("impossible: a wiring fault");
  }

  @Test
  void closingLetsGoOnceAndAlsoWithoutALink() {
    spi.gives(10, 25);
    look();
    source.close();
    spi.assertLetGo();

    SpiSource unread = new SpiSource("top", SETTINGS, spi, () -> nanos);
    unread.close();
  }

  private Reading look() {
    return source.read(new Moment(0, 0)).orElseThrow();
  }

  private void pass(long seconds) {
    nanos += seconds * 1_000_000_000L;
  }

  private static Reading faulty(Fault fault) {
    return Reading.faulty(new Moment(0, 0), "top", fault);
  }
}
