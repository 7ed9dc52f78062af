package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThermocoupleTypeTest {
  private static final ThermocoupleType K = ThermocoupleType.K;

  /** NIST SRD 60 table for Type K, every 10 °C from -270 to 1370, printed to 0.001 mV. */
  @Test
  void givesEveryPrintedEmfOfTheTypeKTable() throws IOException {
    List<String[]> table = typeKTable();

    assertThat(table).hasSize(165);
    for (String[] row : table) {
      double printedMv = Double.parseDouble(row[1]);
      assertThat(Math.rint(K.emfMv(Double.parseDouble(row[0])) * 1000) / 1000)
          .as("emf at %s °C", row[0])
          .isCloseTo(printedMv, within(1e-9));
    }
  }

  /** The same table backwards: half a printed step is the most that rounding can move it. */
  @Test
  void givesEveryTemperatureOfTheTypeKTableFromItsPrintedEmf() throws IOException {
    for (String[] row : typeKTable()) {
      double temperatureC = Double.parseDouble(row[0]);
      if (temperatureC > K.lowestInverseC()) {
        double halfStepC = 0.5 / K.seebeckUvPerC(temperatureC);
        assertThat(K.temperatureC(Double.parseDouble(row[1])))
            .as("temperature of %s mV", row[1])
            .isCloseTo(temperatureC, within(halfStepC * 1.01));
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void inverseFollowsTheReferenceFunctionWithinATenthOfAMillidegree(ThermocoupleType type) {
    int steps = 200_000;
    double lowest = type.lowestInverseC();
    double worst = 0;
    for (int i = 0; i <= steps; i++) {
      double t = lowest + (type.highestC() - lowest) * i / steps;
      double error = Math.abs(type.temperatureC(type.emfMv(t)) - t);
      worst = Double.isNaN(error) ? Double.POSITIVE_INFINITY : Math.max(worst, error);
    }

    assertThat(worst).isLessThan(1e-4);
  }

  @Property
  void hotterAlwaysGivesMoreEmf(
      @ForAll @DoubleRange(min = -200, max = 1371) double t,
      @ForAll @DoubleRange(min = 0.01, max = 1) double more) {
    assertThat(K.emfMv(t + more)).isGreaterThan(K.emfMv(t));
  }

  @ParameterizedTest
  @EnumSource
  void slopeIsThatOfTheFunction(ThermocoupleType type) {
    for (double t = type.lowestC() + 1; t < type.highestC() - 1; t += 7.3) {
      double measured = (type.emfMv(t + 0.01) - type.emfMv(t - 0.01)) / 0.02 * 1000;
      assertThat(type.seebeckUvPerC(t)).as("at %s °C", t).isCloseTo(measured, within(2e-3));
    }
  }

  /** thermibel.be, thermocouple voltage and temperature conversion: all types at 350 °C, mV. */
  @ParameterizedTest
  @CsvSource({
    "B, 0.596",
    "E, 24.964",
    "J, 19.090",
    "K, 14.293",
    "N, 11.136",
    "R, 2.896",
    "S, 2.786",
    "T, 17.819"
  })
  void publishedEmfAt350(ThermocoupleType type, double publishedMv) {
    assertThat(type.emfMv(350)).isCloseTo(publishedMv, within(0.0005));
  }

  @Test
  void endsOfTheRangeAreInsideIt() {
    for (ThermocoupleType type : ThermocoupleType.values()) {
      assertThat(type.temperatureC(type.highestEmfMv())).isCloseTo(type.highestC(), within(1e-4));
      assertThat(type.temperatureC(type.lowestEmfMv()))
          .isCloseTo(type.lowestInverseC(), within(1e-4));
    }
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {-5.9, 54.9, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void emfOutsideTheInverseIsRefused(double emfMv) {
    assertThatThrownBy(() -> K.temperatureC(emfMv))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("-5.891 to 54.886 mV");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-270.1, 1372.1, Double.NaN, Double.POSITIVE_INFINITY})
  void temperatureOutsideTheFunctionIsRefused(double temperatureC) {
    assertThatThrownBy(() -> K.emfMv(temperatureC))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("-270.000 to 1372.000 °C");
    assertThatThrownBy(() -> K.seebeckUvPerC(temperatureC)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void typeBSaysWhyItHasNoTemperatureInTheCold() {
    assertThatThrownBy(() -> ThermocoupleType.B.temperatureC(-0.001))
        .hasMessageContaining("no single temperature below 42 °C");
  }

  private static List<String[]> typeKTable() throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                ThermocoupleTypeTest.class.getResourceAsStream("type-k-every-10c.csv"),
                StandardCharsets.US_ASCII))) {
      return reader
          .lines()
          .filter(line -> !line.startsWith("#") && !line.startsWith("t_c"))
          .map(line -> line.split(","))
          .toList();
    }
  }
}
