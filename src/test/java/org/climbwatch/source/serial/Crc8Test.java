package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class Crc8Test {
  /** The check value of CRC-8/SMBUS in the public catalogues of CRC algorithms. */
  @Test
  void givesThePublishedCheckValue() {
    assertThat(of("123456789")).isEqualTo(0xF4);
  }

  /** Worked by hand: 01 hex times x^8 leaves x^2 + x + 1; nothing leaves 0. */
  @Test
  void givesTheRemaindersWorkedByHand() {
    assertThat(of("\u0001")).isEqualTo(0x07);
    assertThat(of("")).isZero();
  }

  @Test
  void looksOnlyAtTheBytesItIsToldOf() {
    assertThat(Crc8.of("123456789 *9:F4".getBytes(StandardCharsets.US_ASCII), 9)).isEqualTo(0xF4);
  }

  private static int of(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
    return Crc8.of(bytes, bytes.length);
  }
}
