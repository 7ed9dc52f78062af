package org.climbwatch.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Curves whose level, time constant and arrival are known from the algebra of a first-order step
 * response, {@code T = L - (L - T0) exp(-t / tau)}; arrival at T1 after {@code tau ln((L - T0) / (L
 * - T1))}.
 */
class ForecasterTest {
  private static final OptionalDouble TARGET_C = OptionalDouble.of(1240);

  private final Forecaster forecaster = new Forecaster();
  private long second;
  private double noise;

  @ParameterizedTest
  @CsvSource({
    "600, 1300, 60, 60",
    "600, 1300, 60, 40",
    "800, 1200, 40, 45",
    "900, 1100, 25, 40",
    "700, 1250, 120, 60"
  })
  void findsLevelAndTimeConstantOfAStepResponse(
      double fromC, double levelC, double constantMinutes, int minutes) {
    double constantS = constantMinutes * 60;

    run(minutes * 60, t -> levelC - (levelC - fromC) * StrictMath.exp(-t / constantS), 0.3);

    Forecast.Known known = known();
    assertThat(levelC).isBetween(known.levelC().low(), known.levelC().high());
    assertThat(constantS).isBetween(known.timeConstantS().low(), known.timeConstantS().high());
  }

  @Test
  void theIntervalNarrowsAsTheCurveBends() {
    DoubleUnaryOperator curve = t -> 1100 - 300 * StrictMath.exp(-t / 2400);
    run(1200, curve, 0.2);
    double early = width(known().levelC());

    run(3600, t -> curve.applyAsDouble(t + 1200), 0.2);

    assertThat(width(known().levelC())).isLessThan(early / 2).isLessThan(40);
  }

  @Test
  void arrivalOfASteadyClimbIsTheWayOverTheClimb() {
    run(3600, t -> 1000 + 120 * t / 3600, 0.3);

    Forecast.Known known = known();
    double wayS = (1240 - 1120) / 120.0 * 3600;
    // a bend of some per cent in an hour cannot be told from a straight line
    assertThat(known.climbCPerHour()).isCloseTo(120, within(6.0));
    assertThat(wayS).isBetween(known.arrivalS().orElseThrow().low(), Double.POSITIVE_INFINITY);
    assertThat(known.arrivalS().orElseThrow().best()).isCloseTo(wayS, within(0.35 * wayS));
  }

  @Test
  void arrivalOnABentCurveLiesInItsInterval() {
    double constantS = 5400;

    run(3600, t -> 1350 - 350 * StrictMath.exp(-t / constantS), 0.3);

    double nowC = 1350 - 350 * StrictMath.exp(-3600 / constantS);
    double arrivalS = constantS * StrictMath.log((1350 - nowC) / (1350 - 1240));
    Span arrival = known().arrivalS().orElseThrow();
    assertThat(arrivalS).isBetween(arrival.low(), arrival.high());
  }

  @Test
  void aFireThatDoesNotReachTheTargetNeverArrives() {
    run(3600, t -> 1150 - 250 * StrictMath.exp(-t / 2400), 0.2);

    assertThat(known().levelC().high()).isLessThan(1240);
    assertThat(known().arrivalS().orElseThrow().best()).isInfinite();
  }

  @Test
  void withoutATargetThereIsALevelButNoArrival() {
    for (int s = 0; s < 3600; s++) {
      forecaster.add(s * 1000L, 1150 - 250 * StrictMath.exp(-s / 2400.0), OptionalDouble.empty());
    }

    assertThat(known().arrivalS()).isEmpty();
    assertThat(known().levelC().best()).isCloseTo(1150, within(20.0));
  }

  @Test
  void isNotKnownBeforeThereIsEnoughOfTheCurve() {
    run(400, t -> 500 + t / 36, 0.3);

    assertThat(forecaster.forecast()).isEqualTo(new Forecast.NotYet(Forecast.Reason.TOO_EARLY));
  }

  @Test
  void aResetAsAfterAGapForgetsTheOldCurve() {
    run(3600, t -> 500 + t / 36, 0.3);

    forecaster.reset();
    second += 600;
    run(120, t -> 700 - t / 36, 0.3);

    assertThat(forecaster.forecast().known()).isEmpty();
  }

  /** A loose wire: ten seconds in every minute and a half are readings, the rest are faults. */
  @Test
  void readingsThatAreMostlyMissingGiveNoForecast() {
    run(3600, t -> 500 + t / 36, 0.3);

    for (int t = 0; t < 3600; t++) {
      if (t % 90 < 10) {
        forecaster.add(second * 1000, 600 + t / 36.0, TARGET_C);
      }
      second++;
    }

    assertThat(forecaster.forecast().known()).isEmpty();
  }

  /** The track sets spikes aside; one that slips through, as two in a row do, must not matter. */
  @Test
  void aSpikeThatSlippedThroughChangesTheLevelLittle() {
    run(3600, t -> 1150 - 250 * StrictMath.exp(-t / 2400), 0.2);
    double before = known().levelC().best();

    forecaster.add(second * 1000, 1160, TARGET_C);
    run(300, t -> 1150 - 250 * StrictMath.exp(-(t + 3600) / 2400), 0.2);

    assertThat(known().levelC().best()).isCloseTo(before, within(15.0));
  }

  @Test
  void gasTurnedUpStartsANewEstimateThatForgetsTheOldLevel() {
    run(3600, t -> 1000 - 200 * StrictMath.exp(-t / 2400), 0.2);
    assertThat(known().levelC().high()).isLessThan(1050);
    double fromC = 1000 - 200 * StrictMath.exp(-1.5);

    run(300, t -> fromC + 15 * (1 - StrictMath.exp(-t / 60)) + t / 36, 0.2);
    assertThat(forecaster.forecast()).isEqualTo(new Forecast.NotYet(Forecast.Reason.CHANGED));
    run(1500, t -> fromC + 15 + (t + 300) / 36, 0.2);

    assertThat(known().levelC().high()).isGreaterThan(1240);
    assertThat(known().climbCPerHour()).isCloseTo(100, within(10.0));
    assertThat(known().sinceFallS()).isInfinite();
  }

  @Test
  void remembersWhenTheFireWasTurnedDown() {
    run(3600, t -> 900 + t / 36, 0.2);

    run(1500, t -> 1000 - 12 * (1 - StrictMath.exp(-t / 60)) + t / 180, 0.2);

    assertThat(known().sinceFallS()).isCloseTo(1500, within(200.0));
  }

  @ParameterizedTest
  @CsvSource({"0.1", "0.5", "1.5"})
  void aNoisyCurveKeepsItsLevelInTheInterval(double spreadC) {
    run(3600, t -> 1150 - 250 * StrictMath.exp(-t / 3600), spreadC);

    assertThat(1150.0).isBetween(known().levelC().low(), known().levelC().high());
  }

  @Test
  void theSameReadingsGiveTheSameForecast() {
    run(3000, t -> 1150 - 250 * StrictMath.exp(-t / 3600), 1);
    Forecast first = forecaster.forecast();
    forecaster.reset();
    second = 0;
    noise = 0;

    run(3000, t -> 1150 - 250 * StrictMath.exp(-t / 3600), 1);

    assertThat(forecaster.forecast()).isEqualTo(first);
  }

  private static double width(Span span) {
    return span.high() - span.low();
  }

  private Forecast.Known known() {
    return forecaster.forecast().known().orElseThrow();
  }

  /** Readings once a second, with noise that hangs together as a flame's does. */
  private void run(int seconds, DoubleUnaryOperator curve, double spreadC) {
    for (int t = 0; t < seconds; t++) {
      noise = 0.7 * noise + 0.7 * spreadC * 1.73 * StrictMath.sin(second * second % 9973 * 7.77);
      forecaster.add(second * 1000, curve.applyAsDouble(t) + noise, TARGET_C);
      second++;
    }
  }
}
