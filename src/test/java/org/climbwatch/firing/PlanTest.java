package org.climbwatch.firing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class PlanTest {
  /** 20 to 120 at 50 (2 h), an hour's hold, to 1270 at 115 (10 h), half an hour, down to 1000. */
  private final Plan plan =
      new Plan(
          List.of(
              new Plan.Segment(50, 120, 60),
              new Plan.Segment(115, 1270, 30),
              new Plan.Segment(270, 1000, 0)));

  private double atHour(double hour) {
    return plan.meantC(hour * 3600);
  }

  @Test
  void goesUpHoldsAndComesDown() {
    assertThat(atHour(0)).isEqualTo(20);
    assertThat(atHour(1)).isEqualTo(70, within(1e-9));
    assertThat(atHour(2)).isEqualTo(120, within(1e-9));
    assertThat(atHour(2.9)).isEqualTo(120, within(1e-9));
    assertThat(atHour(8)).isEqualTo(695, within(1e-9));
    assertThat(atHour(13.2)).isEqualTo(1270, within(1e-9));
    assertThat(atHour(14)).isEqualTo(1135, within(1e-9));
    assertThat(atHour(20)).isEqualTo(1000);
  }

  @Test
  void restsWhereItHoldsOrComesDownAndNotBehindItsEnd() {
    assertThat(List.of(1.9, 3.1, 12.9)).noneMatch(hour -> plan.rests(hour * 3600));
    assertThat(List.of(2.0, 2.9, 13.2, 14.0)).allMatch(hour -> plan.rests(hour * 3600));
    assertThat(plan.rests(20 * 3600)).isFalse();
  }

  @Test
  void restsOnItsWayWhereItGoesHigherLater() {
    assertThat(List.of(2.0, 2.9)).allMatch(hour -> plan.restsOnItsWay(hour * 3600));
    assertThat(List.of(1.9, 13.2, 14.0, 20.0)).noneMatch(hour -> plan.restsOnItsWay(hour * 3600));
  }

  @Test
  void noPlanWantsNothing() {
    assertThat(Plan.NONE.restsOnItsWay(100)).isFalse();
    assertThat(Plan.NONE.rests(100)).isFalse();
    assertThat(Plan.NONE.meantC(100)).isNaN();
  }
}
