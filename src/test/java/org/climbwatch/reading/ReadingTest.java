package org.climbwatch.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ReadingTest {
  private static final Moment AT = new Moment(0, 1000);

  @Test
  void aSingleLookHasOneSampleAndNoSpread() {
    assertThat(Reading.emf(AT, "upper", 40, 25))
        .isEqualTo(new Reading.Emf(AT, "upper", 40, 25, 1, 0));
    assertThat(Reading.linearised(AT, "upper", 1000, OptionalDouble.empty()))
        .isEqualTo(new Reading.Linearised(AT, "upper", 1000, OptionalDouble.empty(), 1, 0));
  }

  @Test
  void spreadsLieOnTheGridOfTheRecord() {
    assertThat(Reading.emf(AT, "upper", 40, 25, 10, 0.01234567))
        .isEqualTo(new Reading.Emf(AT, "upper", 40, 25, 10, 0.0123));
    assertThat(Reading.linearised(AT, "upper", 1000, OptionalDouble.empty(), 4, 0.1234567))
        .isEqualTo(new Reading.Linearised(AT, "upper", 1000, OptionalDouble.empty(), 4, 0.123));
  }

  @Test
  void aSpreadThatCannotBeIsRefused() {
    assertThatThrownBy(() -> Reading.emf(AT, "upper", 40, 25, 0, 0))
        .hasMessage("samples must be 1 or more, was 0");
    assertThatThrownBy(() -> Reading.emf(AT, "upper", 40, 25, 1, 0.1))
        .hasMessage("spreadMv of 1 must be 0 or more, and 0 of one, was 0.1");
    assertThatThrownBy(() -> Reading.emf(AT, "upper", 40, 25, 5, -0.1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () -> Reading.linearised(AT, "upper", 40, OptionalDouble.empty(), 5, Double.NaN))
        .hasMessage("spreadC must be finite, was NaN");
  }
}
