package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertaintyTest {
  private static final ThermocoupleType K = ThermocoupleType.K;
  private static final ToleranceClass IEC_2 = ToleranceClass.IEC_2;

  /**
   * By hand at 1000 °C, cold junction 25 °C, class 2, amplifier 4 °C, cold junction 2 °C: wire 7.5;
   * slopes 40.44 / 38.98 µV/°C (Type K reference function), so cold junction 2.07; root of (56.25 +
   * 16 + 4.30) / 3 is 5.05; times 2.
   */
  @Test
  void budgetWorkedByHand() {
    assertThat(expandedC(K, IEC_2, 1000, 25, 4, 2)).isCloseTo(10.10, within(0.02));
  }

  /** The same chain with its errors drawn, 200,000 times, from the rectangles that they are. */
  @ParameterizedTest
  @CsvSource({"K, 1000", "K, 300", "S, 1280", "J, 700", "R, 900"})
  void drawnErrorsSpreadAsTheBudgetSays(ThermocoupleType type, double hotC) {
    Random dice = new Random(60584);
    double coldC = 40;
    double emfMv = ColdJunction.emfMv(type, hotC, coldC);
    double wireC = IEC_2.limitC(type, hotC).orElseThrow();
    int draws = 200_000;
    double squares = 0;
    for (int i = 0; i < draws; i++) {
      double sensedC = coldC + 2 * within1(dice);
      double shownC =
          ColdJunction.hotJunctionC(type, emfMv, sensedC)
              + 4 * within1(dice)
              + wireC * within1(dice);
      squares += (shownC - hotC) * (shownC - hotC);
    }

    double twiceSpreadC = 2 * Math.sqrt(squares / draws);
    assertThat(expandedC(type, IEC_2, hotC, coldC, 4, 2))
        .isCloseTo(twiceSpreadC, within(0.01 * twiceSpreadC));
  }

  @Test
  void coldJunctionCountsThroughTheRatioOfSlopes() {
    // Type S: 6 µV/°C at the terminals, 12 in the fire, so 2 °C there are about 1 °C here
    double with = expandedC(ThermocoupleType.S, IEC_2, 1250, 25, 0, 2);
    double without = expandedC(ThermocoupleType.S, IEC_2, 1250, 25, 0, 0);

    double partC = Math.sqrt((with * with - without * without) * 3) / 2;
    assertThat(partC).isBetween(0.9, 1.1);
  }

  @Test
  void pastTheClassItsFormulaGoesOnAndItSaysSo() {
    assertThat(Uncertainty.classHolds(K, IEC_2, 1200)).isTrue();
    assertThat(Uncertainty.classHolds(K, IEC_2, 1250)).isFalse();
    assertThat(expandedC(K, IEC_2, 1250, 25, 0, 0))
        .isCloseTo(2 * 0.0075 * 1250 / Math.sqrt(3), within(1e-9));
  }

  @Test
  void belowTheClassItsFormulaGoesOnToo() {
    assertThat(Uncertainty.classHolds(K, ToleranceClass.ASTM_STANDARD, -250)).isFalse();
    assertThat(expandedC(K, ToleranceClass.ASTM_STANDARD, -250, 25, 0, 0))
        .isCloseTo(2 * 0.02 * 250 / Math.sqrt(3), within(1e-9));
  }

  /** IEC 60584-1 names no class 1 for Type B. */
  @Test
  void typeBWithoutAClass1IsReckonedByClass2AndSaysThatNoClassHolds() {
    assertThat(Uncertainty.classHolds(ThermocoupleType.B, ToleranceClass.IEC_1, 1200)).isFalse();
    assertThat(expandedC(ThermocoupleType.B, ToleranceClass.IEC_1, 1200, 25, 4, 2))
        .isEqualTo(expandedC(ThermocoupleType.B, IEC_2, 1200, 25, 4, 2));
  }

  @Test
  void lastTemperatureThatTheInverseGivesHasAnUncertainty() {
    double lastC = K.temperatureC(K.highestEmfMv() + 4e-5);

    assertThat(expandedC(K, IEC_2, lastC, 25, 4, 2)).isGreaterThan(10);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1372.1, -270.1, Double.NaN})
  void temperatureOutsideTheFunctionHasNone(double temperatureC) {
    assertThatThrownBy(() -> expandedC(K, IEC_2, temperatureC, 25, 4, 2))
        .isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> expandedC(K, IEC_2, 1000, temperatureC, 4, 2))
        .isInstanceOf(OutOfRange.class);
  }

  private static double expandedC(
      ThermocoupleType type,
      ToleranceClass toleranceClass,
      double readC,
      double coldC,
      double amplifierC,
      double coldJunctionC) {
    ProbeErrors errors = ProbeErrors.inDegrees(amplifierC, coldJunctionC);
    return Uncertainty.expandedC(new MeasuringChain(type, toleranceClass, errors), readC, coldC);
  }

  private static double within1(Random dice) {
    return 2 * dice.nextDouble() - 1;
  }
}
