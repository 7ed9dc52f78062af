package org.climbwatch.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MinuteMiddlesTest {
  private final MinuteMiddles minutes = new MinuteMiddles();

  @Test
  void theMiddleOfAMinuteIsKnownOnceTheNextHasBegun() {
    for (int second = 0; second < 60; second++) {
      minutes.add(second * 1000L, second % 10 == 0 ? 400 : 20 + second * 0.01);
      assertThat(minutes.middleC()).isEmpty();
    }

    minutes.add(60_000, 25);

    assertThat(minutes.middleC().orElseThrow()).isBetween(20.25, 20.45);
    assertThat(minutes.fresh()).isTrue();
  }

  /** An idle kiln's readings lie a minute apart; its first minute stood for hours after. */
  @Test
  void minutesOfASingleReadingHaveNoMiddleAndLeaveNoOldOneStanding() {
    for (int second = 0; second <= 60; second++) {
      minutes.add(second * 1000L, 14);
    }
    assertThat(minutes.middleC()).isEqualTo(OptionalDouble.of(14));

    minutes.add(120_000, -15);
    minutes.add(180_000, -31);

    assertThat(minutes.middleC()).isEmpty();
    assertThat(minutes.fresh()).isFalse();
  }

  @Test
  void behindMinutesOfFaultsTheMiddleOfBeforeIsForgotten() {
    for (int second = 0; second < 170; second++) {
      minutes.add(second * 1000L, 900);
    }

    minutes.add(600_000, 700);

    assertThat(minutes.middleC()).isEmpty();
    assertThat(minutes.fall()).isEmpty();
  }

  @Test
  void threeMinutesInARowThatFallAreASteadyFall() {
    for (int second = 0; second <= 300; second++) {
      minutes.add(second * 1000L, 1000 - second / 30.0);
    }

    assertThat(minutes.fall().orElseThrow().dropC()).isBetween(5.5, 8.5);
  }
}
