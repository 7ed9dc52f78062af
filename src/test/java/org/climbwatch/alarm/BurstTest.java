package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;

class BurstTest {
  private final Burst burst = new Burst();

  @Test
  void firstOfSeveralIsTheOneWithTenQuietMinutesBeforeIt() {
    burst.raised("a", minute(0));
    burst.raised("b", minute(11));
    assertThat(burst.cameFirst("b")).isFalse();

    burst.raised("c", minute(12));
    burst.raised("d", minute(21));

    assertThat(burst.cameFirst("b")).isTrue();
    assertThat(burst.cameFirst("a")).isFalse();
    assertThat(burst.cameFirst("c")).isFalse();
    assertThat(burst.cameFirst("d")).isFalse();
  }

  @Test
  void oneThatComesAndGoesLeadsNobodyButItself() {
    burst.raised("a", minute(0));
    burst.raised("a", minute(3));

    assertThat(burst.cameFirst("a")).isFalse();
  }

  @Test
  void markStaysAsLongAsTheAlarmStands() {
    burst.raised("a", minute(0));
    burst.raised("b", minute(1));
    burst.raised("c", minute(90));
    assertThat(burst.cameFirst("a")).isTrue();

    burst.closed("a");

    assertThat(burst.cameFirst("a")).isFalse();
  }

  /** ANSI/ISA-18.2: more than ten in ten minutes (from memory). */
  @Test
  void floodIsMoreThanTenInTenMinutes() {
    for (int i = 0; i < 10; i++) {
      burst.raised("a" + i, minute(0));
    }
    assertThat(burst.isFlood(minute(5))).isFalse();

    burst.raised("b", minute(5));
    assertThat(burst.isFlood(minute(10))).isTrue();

    assertThat(burst.isFlood(minute(11))).isFalse();
  }

  @Test
  void anotherBootIsAnotherDay() {
    burst.raised("a", minute(0));
    burst.raised("b", new Moment(1, 1000));

    assertThat(burst.cameFirst("a")).isFalse();
  }

  private static Moment minute(int minute) {
    return new Moment(0, minute * 60_000L);
  }
}
