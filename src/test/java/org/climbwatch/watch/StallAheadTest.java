package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.signal.Forecast;
import org.junit.jupiter.api.Test;

/** When the stall is said ahead, and when it must stay silent. The target is 1260 °C. */
class StallAheadTest {
  private final Curve curve = new Curve(1260);

  @Test
  void aClimbThatSinksIsWarnedOfBeforeItIsGone() {
    curve.begin(700).steady(120, 90);
    // the gas sinks evenly: the climb is gone after 40 min
    double fromC = curve.celsius();
    curve.follow(60, t -> fromC + 120 * (t - t * t / (2 * 40 * 60.0)) / 3600);

    assertThat(raisedMinute()).isBetween(90.0, 130.0);
    assertThat(curve.messageOf(AlarmKind.STALL_AHEAD))
        .contains("short of the target of 1260 °C")
        .contains("flame at every burner")
        .contains("Never heat a bottle");
  }

  @Test
  void aFireTooSmallForTheTargetIsWarnedOf() {
    curve.begin(700).follow(150, t -> 1130 - 430 * StrictMath.exp(-t / 2700));

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).hasSize(1);
    assertThat(raisedMinute()).isLessThan(125);
    assertThat(curve.messageOf(AlarmKind.STALL_AHEAD))
        .containsPattern("climb \\d+ °C/h at \\d+ °C; it will be under 30 °C/h within \\d+ min");
  }

  @Test
  void aClimbThatCrawlsIsWarnedOfForItsArrival() {
    curve.begin(320).steady(30, 120);

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).hasSize(1);
    assertThat(curve.messageOf(AlarmKind.STALL_AHEAD)).contains("at the earliest");
  }

  @Test
  void aSteadyClimbToTheTargetAndTheEndOfTheFiringAreSilent() {
    curve.begin(400).steady(110, 480).steady(0, 20).steady(-300, 60);

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).isEmpty();
    assertThat(curve.raised(AlarmKind.CLIMB_STALLED)).isEmpty();
  }

  @Test
  void dryingIsSilent() {
    curve.begin(20).steady(80, 45).steady(0, 90).steady(90, 180);

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).isEmpty();
  }

  /** Bound water and quartz: the climb dips by a half round 573 °C and comes back (trade facts). */
  @Test
  void quartzAndBoundWaterAreSilent() {
    curve.begin(400).steady(110, 80).steady(80, 12).steady(50, 20).steady(80, 12).steady(110, 60);

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).isEmpty();
  }

  @Test
  void aPlannedHoldIsSilent() {
    curve
        .begin(700)
        .steady(110, 60)
        .declare(Phase.HOLDING)
        .steady(0, 60)
        .declare(Phase.CLIMBING)
        .steady(100, 60);

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).isEmpty();
  }

  /** 900 to 1000 °C: the climb drops at once and comes back within half an hour. */
  @Test
  void theTurnToReductionIsSilent() {
    curve.begin(750).steady(110, 120);
    double fromC = curve.celsius();
    curve.follow(25, t -> fromC - 10 * (1 - StrictMath.exp(-t / 60)) + 10 * t / 3600);
    curve.steady(70, 60);

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).isEmpty();
  }

  @Test
  void gasRaisedInStepsIsSilent() {
    curve.begin(500);
    for (int step = 0; step < 12; step++) {
      double fromC = curve.celsius();
      // a step of gas: a jump, then a climb that sinks from 150 to 90 °C/h until the next
      curve.follow(
          20, t -> fromC + 8 * (1 - StrictMath.exp(-t / 60)) + (150 * t - 0.025 * t * t) / 3600);
    }

    assertThat(curve.raised(AlarmKind.STALL_AHEAD)).isEmpty();
  }

  @Test
  void theDoorOpenedForDrawingWareInFastWorkIsSilent() {
    Curve fast = new Curve(1000);
    fast.begin(500).steady(400, 74).steady(100, 5);
    for (int opened = 0; opened < 4; opened++) {
      fast.steady(-9000, 1).steady(2200, 3).steady(300, 4).steady(0, 12);
    }

    assertThat(fast.raised(AlarmKind.STALL_AHEAD)).isEmpty();
  }

  @Test
  void withoutATargetItNeverSpeaks() {
    Curve aimless = new Curve();

    aimless.begin(700).follow(180, t -> 1130 - 430 * StrictMath.exp(-t / 2700));

    assertThat(aimless.raised(AlarmKind.STALL_AHEAD)).isEmpty();
    assertThat(aimless.raised(AlarmKind.CLIMB_STALLED)).isNotEmpty();
  }

  @Test
  void theViewCarriesTheForecastAndSaysWhenItIsNotKnown() {
    curve.begin(700).steady(110, 5);
    assertThat(curve.view().forecast()).isEqualTo(new Forecast.NotYet(Forecast.Reason.TOO_EARLY));

    curve.steady(110, 40);
    assertThat(curve.view().forecast().known()).isPresent();

    curve.declare(Phase.HOLDING).steady(0, 1);
    assertThat(curve.view().forecast())
        .isEqualTo(new Forecast.NotYet(Forecast.Reason.NOT_CLIMBING));
  }

  private double raisedMinute() {
    List<Event.AlarmChanged> raised = curve.raised(AlarmKind.STALL_AHEAD);
    assertThat(raised)
        .extracting(Event.AlarmChanged::alarmState)
        .contains(AlarmState.UNACKNOWLEDGED);
    return raised.get(0).at().millis() / 60_000.0;
  }
}
