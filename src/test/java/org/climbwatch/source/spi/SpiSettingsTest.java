package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpiSettingsTest {
  private static final Chip MAX31855 = new Max31855(ThermocoupleType.K);

  @Test
  void namesItsDevice() {
    assertThat(new SpiSettings(1, 2, 5_000_000, MAX31855).device()).isEqualTo("/dev/spidev1.2");
  }

  @ParameterizedTest(name = "{3}")
  @CsvSource({
    "-1, 0, 500000, 'bus must be 0 to 6, was -1'",
    "7, 0, 500000, 'bus must be 0 to 6, was 7'",
    "0, -1, 500000, 'chipSelect must be 0 to 2, was -1'",
    "0, 3, 500000, 'chipSelect must be 0 to 2, was 3'",
    "0, 0, 99999, 'clockHz must be 100000 to 5000000, was 99999'",
    "0, 0, 5000001, 'clockHz must be 100000 to 5000000, was 5000001'",
  })
  void whatCannotWorkIsRefused(int bus, int chipSelect, int clockHz, String message) {
    assertThatThrownBy(() -> new SpiSettings(bus, chipSelect, clockHz, MAX31855))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }

  /** Serial clock limits of the four data sheets. */
  @Test
  void eachChipHasAFastestClockAndASpiModeOfItsOwn() {
    Chip max31856 = new Max31856(ThermocoupleType.K, Max31856.Mode.TEMPERATURE, 1, 50, false, 0);
    Chip ads1118 = new Ads1118(ThermocoupleType.K, Ads1118.Inputs.AIN0_AIN1, 256, 8);
    Chip max6675 = new Max6675(25);

    assertThat(MAX31855.mostClockHz()).isEqualTo(5_000_000);
    assertThat(max31856.mostClockHz()).isEqualTo(5_000_000);
    assertThat(max6675.mostClockHz()).isEqualTo(4_300_000);
    assertThat(ads1118.mostClockHz()).isEqualTo(4_000_000);
    assertThat(MAX31855.spiMode()).isZero();
    assertThat(max6675.spiMode()).isZero();
    assertThat(max31856.spiMode()).isEqualTo(1);
    assertThat(ads1118.spiMode()).isEqualTo(1);
  }

  @Test
  void everyChipHasItsWordAndAnUnknownOneIsToldTheOthers() {
    for (ChipKind kind : ChipKind.values()) {
      assertThat(ChipKind.ofWord(kind.word())).isEqualTo(kind);
    }
    assertThatThrownBy(() -> ChipKind.ofWord("max1"))
        .hasMessage("unknown chip \"max1\"; allowed: max31855, max31856, max6675, ads1118");
  }
}
