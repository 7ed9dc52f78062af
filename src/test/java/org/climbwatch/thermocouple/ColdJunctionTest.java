package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColdJunctionTest {
  /** instrumentationtools.com, "Calculate the Thermocouple's Measurement Junction Temperature". */
  @ParameterizedTest
  @CsvSource({"2.55, 195", "10.93, 567"})
  void typeKWithTerminalsAt84Fahrenheit(double readingMv, double publishedF) {
    double hotC = ColdJunction.hotJunctionC(ThermocoupleType.K, readingMv, celsius(84));

    assertThat(hotC * 1.8 + 32).isCloseTo(publishedF, within(0.5));
  }

  /** The same page: Type J, meter terminals at 17 °C, answers rounded to 1 °C. */
  @ParameterizedTest
  @CsvSource({"5.05, 112", "31.44, 586"})
  void typeJWithTerminalsAt17Celsius(double readingMv, double publishedC) {
    assertThat(ColdJunction.hotJunctionC(ThermocoupleType.J, readingMv, 17))
        .isCloseTo(publishedC, within(0.5));
  }

  /** README of the Python package thermocouple-its90: 4.096 mV with terminals at 25 °C. */
  @Test
  void typeKWithTerminalsAt25Celsius() {
    assertThat(ColdJunction.hotJunctionC(ThermocoupleType.K, 4.096, 25))
        .isCloseTo(124.3, within(0.05));
    assertThat(ThermocoupleType.K.temperatureC(4.096)).isCloseTo(100.0, within(0.05));
  }

  /** instrumentationtools.com, "Thermocouple Measurement and Reference Junction Temperatures". */
  @ParameterizedTest
  @CsvSource({"589, 70, 0.463", "1922, 135, 5.294"})
  void typeBVoltageBetweenTwoTemperatures(double hotF, double coldF, double publishedMv) {
    assertThat(ColdJunction.emfMv(ThermocoupleType.B, celsius(hotF), celsius(coldF)))
        .isCloseTo(publishedMv, within(0.0006));
  }

  @Test
  void addingDegreesInsteadOfEmfsWouldBeWrongByMoreThanADegree() {
    double emfMv = ColdJunction.emfMv(ThermocoupleType.K, 1222, 25);

    assertThat(ColdJunction.hotJunctionC(ThermocoupleType.K, emfMv, 25))
        .isCloseTo(1222, within(1e-3));
    assertThat(ThermocoupleType.K.temperatureC(emfMv) + 25).isNotCloseTo(1222, within(1.0));
  }

  @Test
  void sumOutsideTheFunctionIsRefused() {
    assertThatThrownBy(() -> ColdJunction.hotJunctionC(ThermocoupleType.K, 54.5, 25))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("-6.458 to 54.886 mV");
    assertThatThrownBy(() -> ColdJunction.hotJunctionC(ThermocoupleType.K, Double.NaN, 25))
        .isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> ColdJunction.hotJunctionC(ThermocoupleType.B, -0.001, 20))
        .hasMessageContaining("means two temperatures");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-271, 1400, Double.NaN, Double.NEGATIVE_INFINITY})
  void coldJunctionOutsideTheFunctionIsRefused(double coldJunctionC) {
    assertThatThrownBy(() -> ColdJunction.hotJunctionC(ThermocoupleType.K, 1, coldJunctionC))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("-270.000 to 1372.000 °C");
    assertThatThrownBy(() -> ColdJunction.emfMv(ThermocoupleType.K, 100, coldJunctionC))
        .isInstanceOf(OutOfRange.class);
  }

  private static double celsius(double fahrenheit) {
    return (fahrenheit - 32) / 1.8;
  }
}
