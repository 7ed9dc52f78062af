package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class CurveReductionTest {

  /** Walks of a temperature with pauses and gaps, as {@link FiringCurve} makes them. */
  @Provide
  Arbitrary<Curve> curves() {
    Arbitrary<Integer> sizes = Arbitraries.integers().between(1, 400);
    Arbitrary<Double> gapShares = Arbitraries.of(0.0, 0.01, 0.1, 0.45);
    Arbitrary<Long> seeds = Arbitraries.longs();
    return Combinators.combine(sizes, gapShares, seeds).as(CurveReductionTest::walk);
  }

  private static Curve walk(int size, double gapShare, long seed) {
    Random dice = new Random(seed);
    CurvePoints points = new CurvePoints();
    long elapsedMs = 0;
    double temperatureC = 20;
    for (int i = 0; i < size; i++) {
      if (dice.nextDouble() < gapShare) {
        points.gap();
      }
      elapsedMs += dice.nextInt(20) == 0 ? 100_000 : dice.nextInt(3) * 500L;
      temperatureC += dice.nextGaussian() * 10;
      points.add(elapsedMs, temperatureC);
    }
    return points.curve();
  }

  @Property(tries = 500)
  void neverGivesMoreThanWasAskedFor(
      @ForAll("curves") Curve full, @ForAll @IntRange(min = 8, max = 200) int points) {
    assertThat(CurveReduction.reduce(full, points).points()).isLessThanOrEqualTo(points);
  }

  @Property(tries = 500)
  void keepsTheHighestAndTheLowestAndBothEnds(
      @ForAll("curves") Curve full, @ForAll @IntRange(min = 8, max = 200) int points) {
    Curve kept = CurveReduction.reduce(full, points);

    assertThat(known(kept).max()).isEqualTo(known(full).max());
    assertThat(known(kept).min()).isEqualTo(known(full).min());
    assertThat(kept.elapsedMs()[0]).isEqualTo(full.elapsedMs()[0]);
    assertThat(kept.elapsedMs()[kept.points() - 1]).isEqualTo(full.elapsedMs()[full.points() - 1]);
  }

  @Property(tries = 500)
  void inventsNothingAndKeepsTheOrder(
      @ForAll("curves") Curve full, @ForAll @IntRange(min = 8, max = 200) int points) {
    Curve kept = CurveReduction.reduce(full, points);

    int from = 0;
    for (int i = 0; i < kept.points(); i++) {
      from = indexOf(full, kept.elapsedMs()[i], kept.temperatureC()[i], from) + 1;
    }
  }

  @Property(tries = 500)
  void drawsNoLineAcrossAGapAndShowsNoneWhereThereIsNone(
      @ForAll("curves") Curve full, @ForAll @IntRange(min = 8, max = 200) int points) {
    Curve kept = CurveReduction.reduce(full, points);

    int before = 0;
    boolean gapSeen = false;
    for (int i = 1; i < kept.points(); i++) {
      if (Double.isNaN(kept.temperatureC()[i])) {
        assertThat(gapSeen).as("two gaps in a row").isFalse();
        gapSeen = true;
        continue;
      }
      int at = indexOf(full, kept.elapsedMs()[i], kept.temperatureC()[i], before + 1);
      boolean gap = Arrays.stream(full.temperatureC(), before, at + 1).anyMatch(Double::isNaN);
      assertThat(gapSeen).isEqualTo(gap);
      before = at;
      gapSeen = false;
    }
    assertThat(gapSeen).isFalse();
  }

  @Example
  void keepsAOneSecondPeakInADay() {
    CurvePoints day = new CurvePoints();
    for (int second = 0; second < 86_400; second++) {
      day.add(second * 1000L, second == 43_211 ? 1260 : 800);
    }

    Curve kept = CurveReduction.reduce(day.curve(), 100);

    assertThat(kept.points()).isLessThanOrEqualTo(100);
    int peak = indexOf(kept, 43_211_000, 1260, 0);
    assertThat(kept.temperatureC()[peak]).isEqualTo(1260);
  }

  @Example
  void refusesANumberOfPointsThatMakesNoCurve() {
    Curve curve = walk(50, 0, 1);

    assertThatThrownBy(() -> CurveReduction.reduce(curve, 7))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("points must be 8 to 20000, was 7");
    assertThatThrownBy(() -> CurveReduction.reduce(curve, 20_001))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Example
  void anEmptyCurveStaysEmpty() {
    assertThat(CurveReduction.reduce(new CurvePoints().curve(), 8).points()).isZero();
  }

  private static DoubleStream known(Curve curve) {
    return Arrays.stream(curve.temperatureC()).filter(value -> !Double.isNaN(value));
  }

  private static int indexOf(Curve curve, long elapsedMs, double temperatureC, int from) {
    for (int i = from; i < curve.points(); i++) {
      if (curve.elapsedMs()[i] == elapsedMs
          && Double.compare(curve.temperatureC()[i], temperatureC) == 0) {
        return i;
      }
    }
    throw new AssertionError("no point " + temperatureC + " at " + elapsedMs + " behind " + from);
  }
}
