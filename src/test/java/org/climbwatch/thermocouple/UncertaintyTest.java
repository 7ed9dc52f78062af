package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class UncertaintyTest {
  /** IEC 60584-1 as read in secondary tables: class 2 is the greater of 2.5 °C and 0.75 %. */
  @Test
  void toleranceClassesEndWhereTheStandardsEndThem() {
    assertThat(ToleranceClass.IEC_2.limitC(ThermocoupleType.K, 200)).hasValue(2.5);
    assertThat(ToleranceClass.IEC_2.limitC(ThermocoupleType.K, 1200)).hasValue(9.0);
    assertThat(ToleranceClass.IEC_2.limitC(ThermocoupleType.K, 1201)).isEmpty();
    assertThat(ToleranceClass.IEC_1.limitC(ThermocoupleType.K, 1001)).isEmpty();
    assertThat(ToleranceClass.ASTM_SPECIAL.limitC(ThermocoupleType.K, 1260)).hasValue(5.04);
  }

  /**
   * By hand at 1000 °C, cold junction 25 °C, class 2, amplifier 4 °C, cold junction 2 °C: wire 7.5;
   * slopes 40.44 / 38.98 µV/°C (Type K reference function), so cold junction 2.07; root of (56.25 +
   * 16 + 4.30) / 3 is 5.05; times 2.
   */
  @Test
  void budgetWorkedByHand() {
    assertThat(Uncertainty.expandedC(ThermocoupleType.K, ToleranceClass.IEC_2, 1000, 25, 4, 2))
        .isCloseTo(10.10, within(0.02));
  }

  @Test
  void pastTheClassItSaysThatTheClassNoLongerHolds() {
    assertThat(Uncertainty.classHolds(ThermocoupleType.K, ToleranceClass.IEC_2, 1250)).isFalse();
    assertThat(Uncertainty.expandedC(ThermocoupleType.K, ToleranceClass.IEC_2, 1250, 25, 4, 2))
        .isGreaterThan(10.1);
  }
}
