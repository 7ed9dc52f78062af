package org.climbwatch.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TrackTest {
  private final Track track = new Track(SignalSettings.DEFAULT);

  @Test
  void straightClimbIsFoundExactly() {
    for (int s = 0; s <= 300; s++) {
      track.isSpike(s * 1000L, 500 + s * 150 / 3600.0);
    }

    assertThat(track.climb()).isPresent();
    assertThat(track.climb().get().cPerHour()).isCloseTo(150, within(1e-6));
  }

  @Test
  void slidingSumsAgreeWithTheLineFittedAfresh() {
    Random random = new Random(7);
    double[] t = new double[4000];
    double[] y = new double[4000];
    for (int i = 0; i < t.length; i++) {
      t[i] = (i == 0 ? 0 : t[i - 1]) + 0.5 + random.nextInt(1000) / 1000.0;
      y[i] = 900 + 0.03 * t[i] + random.nextGaussian() * 0.5;
      track.isSpike(Math.round(t[i] * 1000), y[i]);
    }

    assertThat(track.climb().get().cPerHour())
        .isCloseTo(slopeOfLast(180, t, y) * 3600, within(0.02));
  }

  @Test
  void noRateAndNoPeakIsTakenAcrossAStep() {
    for (int s = 0; s < 400; s++) {
      track.isSpike(s * 1000L, 800);
    }
    track.restartRates();
    for (int s = 400; s < 640; s++) {
      track.isSpike(s * 1000L, 740 + s % 2 * 0.01);
      track.climb().ifPresent(climb -> assertThat(climb.cPerHour()).isCloseTo(0, within(5.0)));
      track.quickClimb().ifPresent(quick -> assertThat(quick.cPerHour()).isCloseTo(0, within(9.0)));
    }

    assertThat(track.climb()).isPresent();
    assertThat(track.quickClimb()).isPresent();
    assertThat(track.recentPeakC().getAsDouble()).isLessThan(741);
  }

  private static double slopeOfLast(double windowS, double[] t, double[] y) {
    int last = t.length - 1;
    double n = 0;
    double st = 0;
    double sy = 0;
    double stt = 0;
    double sty = 0;
    for (int i = last; i >= 0 && t[last] - t[i] <= windowS; i--) {
      double dt = t[i] - t[last];
      double dy = y[i] - y[last];
      n++;
      st += dt;
      sy += dy;
      stt += dt * dt;
      sty += dt * dy;
    }
    return (n * sty - st * sy) / (n * stt - st * st);
  }

  /** Slope error s sqrt(12 dt / W^3) of independent noise: ordinary least squares, any textbook. */
  @Test
  void uncertaintyOfIndependentNoiseIsThatOfLeastSquares() {
    Random random = new Random(1);
    double sum = 0;
    int looks = 0;
    for (int s = 0; s < 20_000; s++) {
      track.isSpike(s * 1000L, 800 + random.nextGaussian() * 0.5);
      if (s % 200 == 199) {
        sum += track.climb().get().uncertaintyCPerHour();
        looks++;
      }
    }
    double textbook = 2 * 3600 * 0.5 * Math.sqrt(12 / Math.pow(180, 3));

    assertThat(sum / looks).isBetween(textbook * 0.9, textbook * 1.25);
  }

  @Test
  void trueClimbLiesWithinTheUncertaintyNineTimesInTenAlsoWithFlameNoise() {
    Random random = new Random(3);
    double noise = 0;
    int inside = 0;
    int looks = 0;
    for (int s = 0; s < 100_000; s++) {
      noise = 0.7 * noise + random.nextGaussian() * 0.5;
      track.isSpike(s * 1000L, 20 + s * 100 / 3600.0 + noise);
      if (s % 200 == 199) {
        Climb climb = track.climb().get();
        looks++;
        inside += Math.abs(climb.cPerHour() - 100) <= climb.uncertaintyCPerHour() ? 1 : 0;
      }
    }

    assertThat(inside / (double) looks).isGreaterThan(0.88);
  }

  @Test
  void singleWildReadingIsSetAside() {
    steady(0, 60, 700);

    assertThat(track.isSpike(60_000, 950)).isTrue();
    assertThat(track.isSpike(61_000, 120)).isTrue();
    assertThat(track.isSpike(62_000, 700.2)).isFalse();
    assertThat(track.temperatureC()).hasValue(700.2);
    assertThat(track.recentPeakC().getAsDouble()).isLessThan(701);
  }

  /** Turning a burner up moved bare couples by 20 to 100 °C in 5 s (NIST gas-burner data). */
  @Test
  void realStepIsBelievedAtTheThirdReading() {
    steady(0, 60, 700);

    assertThat(track.isSpike(60_000, 740)).isTrue();
    assertThat(track.isSpike(61_000, 745)).isTrue();
    assertThat(track.isSpike(62_000, 748)).isFalse();
    assertThat(track.temperatureC()).hasValue(748);
  }

  @Test
  void sensorThatNeverAgreesWithItselfIsNotIgnoredForEver() {
    steady(0, 60, 700);
    int refused = 0;
    for (int i = 0; i < 40; i++) {
      refused += track.isSpike(60_000 + i * 1000L, i % 2 == 0 ? 100 + i : 1200 - i) ? 1 : 0;
    }

    assertThat(refused).isLessThan(40);
  }

  @Test
  void climbIsUnknownUntilHalfTheWindowIsFilled() {
    steady(0, 89, 700);
    assertThat(track.climb()).isEmpty();

    steady(89, 95, 700);
    assertThat(track.climb()).isPresent();
  }

  @Test
  void noRateIsTakenAcrossAGap() {
    steady(0, 300, 700);

    track.isSpike(300_000 + Track.GAP_MILLIS + 1, 400);

    assertThat(track.climb()).isEmpty();
    assertThat(track.quickClimb()).isEmpty();
    assertThat(track.temperatureC()).hasValue(400);
  }

  @Test
  void recentPeakLeavesAfterThreeMinutes() {
    steady(0, 10, 800);
    steady(10, 180, 799);
    assertThat(track.recentPeakC()).hasValue(800);

    steady(180, 195, 799);
    assertThat(track.recentPeakC()).hasValue(799);
  }

  private void steady(int fromSecond, int toSecond, double temperatureC) {
    for (int s = fromSecond; s < toSecond; s++) {
      track.isSpike(s * 1000L, temperatureC);
    }
  }
}
