package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TimelineTest {
  private static final long NOON_MS = 1_777_852_800_000L;

  private static Timeline.Stretch stretch(int boot, long offsetMs, long firstMs, long lastMs) {
    return new Timeline.Stretch(boot, offsetMs, firstMs, lastMs);
  }

  @Test
  void elapsedTimeStartsAtTheFirstReading() {
    Timeline timeline = new Timeline(List.of(stretch(3, NOON_MS, 900, 9000)), 1000);

    assertThat(timeline.elapsedMs(3, 900)).isZero();
    assertThat(timeline.elapsedMs(3, 4000)).isEqualTo(3000);
    assertThat(timeline.wallMs(3, 4000)).isEqualTo(NOON_MS + 4000);
    assertThat(timeline.durationMs()).isEqualTo(8100);
  }

  @Test
  void aPauseBetweenBootsIsAsLongAsTheWallClocksSay() {
    Timeline timeline =
        new Timeline(
            List.of(stretch(0, NOON_MS, 1000, 5000), stretch(2, NOON_MS + 60_000, 200, 9000)),
            1000);

    assertThat(timeline.elapsedMs(2, 200)).isEqualTo(59_200);
    assertThat(timeline.elapsedMs(2, 1200)).isEqualTo(60_200);
  }

  @Test
  void aBootWhoseClockIsBehindCountsItsPauseAsNothing() {
    Timeline timeline =
        new Timeline(List.of(stretch(0, NOON_MS, 1000, 5000), stretch(1, 0, 200, 9000)), 1000);

    assertThat(timeline.elapsedMs(1, 200)).isEqualTo(4000);
    assertThat(timeline.endElapsedMs()).isEqualTo(12_800);
  }

  @Test
  void aPauseOfYearsIsAClockThatWasNeverSetBefore() {
    Timeline timeline =
        new Timeline(List.of(stretch(0, 0, 1000, 5000), stretch(1, NOON_MS, 200, 9000)), 1000);

    assertThat(timeline.elapsedMs(1, 200)).isEqualTo(4000);
  }
}
