package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpiSettingsTest {
  @Test
  void namesItsDevice() {
    assertThat(new SpiSettings(1, 2, 5_000_000, ThermocoupleType.S).device())
        .isEqualTo("/dev/spidev1.2");
  }

  @ParameterizedTest(name = "{4}")
  @CsvSource({
    "-1, 0, 500000, K, 'bus must be 0 to 6, was -1'",
    "7, 0, 500000, K, 'bus must be 0 to 6, was 7'",
    "0, -1, 500000, K, 'chipSelect must be 0 to 2, was -1'",
    "0, 3, 500000, K, 'chipSelect must be 0 to 2, was 3'",
    "0, 0, 99999, K, 'clockHz must be 100000 to 5000000, was 99999'",
    "0, 0, 5000001, K, 'clockHz must be 100000 to 5000000, was 5000001'",
    "0, 0, 500000, B, 'no MAX31855 is made for type B; allowed: K, J, N, S, T, E, R'",
  })
  void whatCannotWorkIsRefused(
      int bus, int chipSelect, int clockHz, ThermocoupleType type, String message) {
    assertThatThrownBy(() -> new SpiSettings(bus, chipSelect, clockHz, type))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }
}
