package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GapRuleTest {
  private final GapRule rule = new GapRule();

  private List<Boolean> gapsBefore(long... seconds) {
    List<Boolean> gaps = new ArrayList<>();
    for (long second : seconds) {
      gaps.add(rule.good(0, second * 1000));
    }
    return gaps;
  }

  @Test
  void upToThirtySecondsIsNoGapAtOneReadingASecond() {
    assertThat(gapsBefore(0, 1, 31, 32, 63)).containsExactly(true, false, false, false, true);
  }

  @Test
  void aColdKilnsReadingAMinuteHasNoGaps() {
    assertThat(gapsBefore(0, 60, 120, 180)).containsExactly(true, false, false, false);
  }

  @Test
  void threeMissedMinutesOfAColdKilnAreAGap() {
    assertThat(gapsBefore(0, 60, 241)).containsExactly(true, false, true);
  }

  @Test
  void aSlowerReadingShowsAsOneGapAndThenAsTheNewInterval() {
    assertThat(gapsBefore(0, 1, 2, 62, 122)).containsExactly(true, false, false, true, false);
  }

  @Test
  void aFaultIsAGap() {
    rule.good(0, 0);
    rule.fault();

    assertThat(rule.good(0, 1000)).isTrue();
    assertThat(rule.good(0, 2000)).isFalse();
  }

  @Test
  void anotherBootIsAGapHoweverItsClockRuns() {
    rule.good(0, 5000);

    assertThat(rule.good(1, 6000)).isTrue();
  }
}
