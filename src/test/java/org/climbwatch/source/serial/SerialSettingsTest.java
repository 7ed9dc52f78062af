package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SerialSettingsTest {
  @Test
  void aPortAloneGetsTheDefaults() {
    assertThat(SerialSettings.of("/dev/ttyUSB0"))
        .isEqualTo(new SerialSettings("/dev/ttyUSB0", 9600, Duration.ofSeconds(10), true));
  }

  @ParameterizedTest(name = "\"{0}\"")
  @ValueSource(strings = {"", "ttyUSB0", "serial/by-id/x", "/dev/tty\0USB0"})
  void aPortThatIsNoWholePathIsRefused(String port) {
    assertThatThrownBy(() -> SerialSettings.of(port))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("whole path such as /dev/serial/by-id/");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -9600, 9601, 1_000_000})
  void aSpeedThatIsNotUsualIsRefused(int baud) {
    assertThatThrownBy(() -> new SerialSettings("/dev/x", baud, Duration.ofSeconds(10), true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("9600")
        .hasMessageEndingWith("was " + baud);
  }

  @ParameterizedTest
  @ValueSource(longs = {-1, 0, 999, 600_001})
  void aSilenceOutsideItsRangeIsRefused(long millis) {
    assertThatThrownBy(() -> new SerialSettings("/dev/x", 9600, Duration.ofMillis(millis), true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("1 to 600 s");
  }
}
