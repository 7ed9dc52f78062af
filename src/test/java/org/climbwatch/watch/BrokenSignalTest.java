package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.junit.jupiter.api.Test;

/** Signals that step as no couple does. What each fault reads is common practice. */
class BrokenSignalTest {
  @Test
  void oneWildLevelHidesNoStallAfterIt() {
    Curve firing = hot();
    double beforeC = firing.celsius();
    firing.follow(0.25, t -> beforeC + 600).follow(60, t -> beforeC + 110 * t / 3600).steady(5, 60);

    assertThat(firing.view().phase()).isEqualTo(Phase.CLIMBING);
    assertThat(firing.raised()).contains(AlarmKind.CLIMB_STALLED);
  }

  /**
   * It then reads the warmth of the place where the lead is shorted (worked out from Seebeck's
   * law).
   */
  @Test
  void aShortedLeadMakesNoColdKilnOfAHotOne() {
    Curve firing = hot().declare(Phase.COOLING).steady(-100, 10);
    double beforeC = firing.celsius();

    firing.follow(0.5, t -> 25).follow(240, t -> 25 + t / 1000);

    assertThat(firing.raised()).containsExactly(AlarmKind.PROBE_LEAPT);
    assertThat(firing.messageOf(AlarmKind.PROBE_LEAPT)).contains("the two wires touch");
    assertThat(firing.view().phase()).isEqualTo(Phase.COOLING);

    firing
        .follow(60, t -> beforeC - 90 - t / 100)
        .follow(900, t -> 40 + 500 * StrictMath.exp(-t / 14_000));

    assertThat(firing.raised()).containsExactly(AlarmKind.PROBE_LEAPT, AlarmKind.SAFE_TO_OPEN);
    assertThat(firing.view().phase()).isEqualTo(Phase.IDLE);
  }

  @Test
  void aShortedLeadThatIsFoundColdEndsWithTheFiring() {
    Curve firing = hot().declare(Phase.COOLING).steady(-100, 10).follow(400, t -> 25);

    assertThat(firing.view().phase()).isEqualTo(Phase.COOLING);
    firing.end().follow(50, t -> 25);

    assertThat(firing.view().alarms())
        .extracting(View.StandingAlarm::state)
        .containsExactly(AlarmState.RETURNED_UNACKNOWLEDGED);
  }

  @Test
  void theForecastIsNotKnownWhileNobodySeesTheFire() {
    Curve firing = hot();
    double beforeC = firing.celsius();
    assertThat(firing.view().forecast().known()).isPresent();

    firing.faulty(Fault.OPEN_CIRCUIT, 60);
    assertThat(firing.view().forecast().known()).isPresent();

    firing.faulty(Fault.OPEN_CIRCUIT, 70);
    assertThat(firing.view().forecast().known()).isEmpty();

    firing.follow(15, t -> beforeC + 110 * (t + 130) / 3600);
    assertThat(firing.view().forecast().known()).isPresent();
  }

  /** Drawn out of the kiln and pushed in again, with 1.5 s to 63 % of the way. */
  @Test
  void aBareCoupleThatIsMovedIsNoBrokenSignal() {
    Curve firing = hot();
    double beforeC = firing.celsius();
    firing
        .follow(1, t -> 25 + (beforeC - 25) * StrictMath.exp(-t / 1.5))
        .follow(20, t -> beforeC - (beforeC - 25) * StrictMath.exp(-t / 1.5));

    assertThat(firing.raised()).doesNotContain(AlarmKind.PROBE_JUMPS);
  }

  /** Some 690 °C, climbing at 110 °C/h. */
  private static Curve hot() {
    return new Curve(1250).begin(18).steady(100, 270).steady(110, 120);
  }
}
