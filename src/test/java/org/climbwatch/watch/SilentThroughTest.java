package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.firing.Phase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What belongs to a good firing raises no alarm of any kind, under the settings as shipped. The
 * courses are common practice for a small gas kiln, seen through a quiet and a restless probe.
 */
class SilentThroughTest {

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void dryingHold(double noiseC) {
    Curve firing =
        new Curve(1240)
            .begin(18)
            .noisy(noiseC)
            .steady(75, 60)
            .follow(240, t -> 93 + 2.5 * StrictMath.sin(t / 700.0))
            .steady(70, 100)
            .steady(120, 120);

    assertThat(firing.raised()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void plannedHold(double noiseC) {
    Curve firing = hot(1240, noiseC).declare(Phase.HOLDING);
    double heldC = firing.celsius();
    firing
        .follow(90, t -> heldC + 3 * StrictMath.sin(t / 500.0))
        .declare(Phase.CLIMBING)
        .steady(110, 120);

    assertThat(firing.raised()).isEmpty();
  }

  /** Bound water and quartz take heat between 500 and 600 °C and give the climb back. */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void quartz(double noiseC) {
    Curve firing =
        new Curve(1240)
            .begin(18)
            .noisy(noiseC)
            .steady(100, 290)
            .steady(60, 20)
            .steady(42, 80)
            .steady(60, 20)
            .steady(110, 240);

    assertThat(firing.raised()).isEmpty();
  }

  /** Damper in, gas up: a dip of minutes, half an hour of slow climb, and on. */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void turnToReduction(double noiseC) {
    Curve firing = hot(1240, noiseC).steady(-25, 4).steady(26, 25).steady(60, 60).steady(45, 150);

    assertThat(firing.raised()).isEmpty();
  }

  /** Body reduction at 900 °C: "climb drops, may fall for an hour" (trade facts). */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void turnToReductionThatTakesTheClimbAway(double noiseC) {
    Curve firing =
        new Curve(1240)
            .begin(18)
            .noisy(noiseC)
            .steady(110, 480)
            .steady(-35, 9)
            .steady(4, 18)
            .steady(45, 40)
            .steady(90, 120);

    assertThat(firing.raised()).isEmpty();
  }

  /** Fast work is drawn glowing, piece by piece, at the target. */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void doorOpenedForDrawingWare(double noiseC) {
    Curve firing = hot(1000, noiseC).steady(110, 150);
    for (int piece = 0; piece < 6; piece++) {
      double beforeC = firing.celsius();
      firing
          .follow(1, t -> beforeC - 70 * (1 - StrictMath.exp(-t / 30.0)))
          .follow(5, t -> beforeC - 60 * StrictMath.exp(-t / 60.0));
    }

    assertThat(firing.raised()).containsExactly(AlarmKind.TARGET_REACHED);
  }

  /** Soon above its old peak, while the minutes before still hold the steep way back to it. */
  @ParameterizedTest
  @ValueSource(doubles = {30, 60, 120})
  void comingBackBehindADoorAndClimbingOn(double backWithinS) {
    Curve firing = hot(1240, 0.3).steady(110, 120);
    double beforeC = firing.celsius();
    firing
        .follow(3, t -> beforeC - 130 * (1 - StrictMath.exp(-t / 20.0)))
        .follow(30, t -> beforeC + 150 * t / 3600 - 130 * StrictMath.exp(-t / backWithinS));

    assertThat(firing.raised(AlarmKind.CLIMB_TOO_FAST)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 1, 2})
  void endOfTheFiring(double noiseC) {
    Curve firing = hot(1000, noiseC).steady(110, 135).declare(Phase.COOLING);
    double topC = firing.celsius();
    firing.follow(14 * 60, t -> 20 + (topC - 20) * StrictMath.exp(-t / 14_000.0));

    assertThat(firing.raised()).containsExactly(AlarmKind.TARGET_REACHED, AlarmKind.SAFE_TO_OPEN);
  }

  /** Some 770 °C, climbing at 110 °C/h. */
  private static Curve hot(double targetC, double noiseC) {
    return new Curve(targetC).begin(18).noisy(noiseC).steady(100, 270).steady(110, 165);
  }
}
