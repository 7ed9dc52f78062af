package org.climbwatch.source.scpi;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers and texts from SCPI-1999 Volume 2, section 21.8. */
class ErrorEntryTest {
  @Test
  void anEmptyQueueSaysNoError() {
    assertThat(ErrorEntry.of("0,\"No error\"").orElseThrow().isNone()).isTrue();
    assertThat(ErrorEntry.of("+0,\"No error\"\r").orElseThrow().isNone()).isTrue();
  }

  @Test
  void anErrorHasItsNumberAndText() {
    ErrorEntry entry = ErrorEntry.of("-113,\"Undefined header\"").orElseThrow();

    assertThat(entry.isNone()).isFalse();
    assertThat(entry).hasToString("-113 \"Undefined header\"");
  }

  @Test
  void aLongTextIsCut() {
    ErrorEntry entry = ErrorEntry.of("-200,\"" + "x".repeat(200) + "\"").orElseThrow();

    assertThat(entry.toString()).hasSizeLessThan(100);
  }

  @ParameterizedTest
  @ValueSource(strings = {"+2.5E+01", "0", "-113", "\"No error\"", "", "1,2", "123456,\"x\""})
  void aMeasurementIsNoEntry(String line) {
    assertThat(ErrorEntry.of(line)).isEmpty();
  }
}
