package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThermocoupleTypeTest {
  private static final ThermocoupleType K = ThermocoupleType.K;
  private static final ThermocoupleType B = ThermocoupleType.B;

  /** NIST SRD 60 table for Type K, every 10 °C from -270 to 1370, printed to 0.001 mV. */
  @Test
  void givesEveryPrintedEmfOfTheTypeKTable() {
    List<String[]> table = Table.rows("type-k-every-10c.csv");

    assertThat(table).hasSize(165);
    for (String[] row : table) {
      double printedMv = Double.parseDouble(row[1]);
      assertThat(Math.rint(K.emfMv(Double.parseDouble(row[0])) * 1000) / 1000)
          .as("emf at %s °C", row[0])
          .isCloseTo(printedMv, within(1e-9));
    }
  }

  /** The same table backwards: half a printed step is the most that its rounding can move it. */
  @Test
  void givesEveryTemperatureOfTheTypeKTableFromItsPrintedEmf() {
    int seen = 0;
    for (String[] row : Table.rows("type-k-every-10c.csv")) {
      double temperatureC = Double.parseDouble(row[0]);
      seen++;
      // the print of the lowest row may be rounded down to past the end
      double printedMv = Math.max(Double.parseDouble(row[1]), K.lowestEmfMv());
      double halfStepC = 0.5 / K.seebeckUvPerC(temperatureC);
      assertThat(K.temperatureC(printedMv))
          .as("temperature of %s mV", row[1])
          .isCloseTo(temperatureC, within(halfStepC * 1.01));
    }
    assertThat(seen).isEqualTo(165);
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

  /** Ranges of the reference functions, NIST SRD 60, °C. */
  @ParameterizedTest
  @CsvSource({
    "B, 0, 1820",
    "E, -270, 1000",
    "J, -210, 1200",
    "K, -270, 1372",
    "N, -270, 1300",
    "R, -50, 1768.1",
    "S, -50, 1768.1",
    "T, -270, 400"
  })
  void rangeIsThePublishedOne(ThermocoupleType type, double lowestC, double highestC) {
    assertThat(type.lowestC()).isEqualTo(lowestC);
    assertThat(type.highestC()).isEqualTo(highestC);
  }

  /** Asked: 0.001 °C against the reference function. 1e-5 shows that no piece is out of place. */
  @ParameterizedTest
  @EnumSource
  void inverseFollowsTheReferenceFunctionWithinTenMicrodegrees(ThermocoupleType type) {
    assertThat(worstErrorC(type, type.lowestInverseC(), type.highestC(), 300_000)).isLessThan(1e-5);
  }

  @Test
  void typeKInverseIsWithinATenthOfAMicrodegreeWhereItsPublishedInverseReaches() {
    assertThat(worstErrorC(K, -200, 1372, 1_572_000)).isLessThan(1e-7);
  }

  /** Slopes fall to a third of a µV/°C there, and the published inverses end at -200 °C. */
  @ParameterizedTest
  @EnumSource(names = {"E", "K", "N", "T"})
  void inverseReachesAsFarDownAsThePublishedFunction(ThermocoupleType type) {
    assertThat(type.lowestInverseC()).isEqualTo(type.lowestC()).isEqualTo(-270);
    assertThat(worstErrorC(type, -270, -199, 710_000)).isLessThan(1e-5);
  }

  /** Where slopes jump from one published piece to the next: N at 0 °C, J at 760, B, R and S. */
  @ParameterizedTest
  @CsvSource({
    "B, 250",
    "B, 630.615",
    "E, 0",
    "J, 0",
    "J, 760",
    "K, 0",
    "N, 0",
    "R, 0",
    "R, 1064.18",
    "R, 1664.5",
    "S, 0",
    "S, 1064.18",
    "S, 1664.5",
    "T, 0"
  })
  void inverseHoldsWherePiecesMeet(ThermocoupleType type, double jointC) {
    assertThat(worstErrorC(type, jointC - 8, jointC + 8, 160_000)).isLessThan(1e-5);
  }

  @ParameterizedTest
  @EnumSource
  void slopeIsThatOfTheFunction(ThermocoupleType type) {
    for (double t = type.lowestC() + 1; t < type.highestC() - 1; t += 7.3) {
      double measured = (type.emfMv(t + 0.01) - type.emfMv(t - 0.01)) / 0.02 * 1000;
      assertThat(type.seebeckUvPerC(t)).as("at %s °C", t).isCloseTo(measured, within(2e-3));
    }
  }

  @ParameterizedTest
  @EnumSource
  void endsOfTheInverseAreInsideIt(ThermocoupleType type) {
    assertThat(type.temperatureC(type.highestEmfMv())).isEqualTo(type.highestC());
    assertThat(type.temperatureC(type.emfMv(type.highestC()))).isEqualTo(type.highestC());
    assertThat(type.temperatureC(type.lowestEmfMv())).isEqualTo(type.lowestInverseC());
    assertThat(type.temperatureC(type.emfMv(type.lowestInverseC())))
        .isEqualTo(type.lowestInverseC());
  }

  /** The record keeps emf in steps of 0.1 µV. */
  @ParameterizedTest
  @EnumSource
  void hotEndOnTheGridOfTheRecordIsInside(ThermocoupleType type) {
    double onGridMv = Math.rint(type.emfMv(type.highestC()) * 1e4) / 1e4;

    assertThat(type.temperatureC(onGridMv))
        .isLessThanOrEqualTo(type.highestC())
        .isCloseTo(type.highestC(), within(0.01));
  }

  /** Else the uncertainty of a reading at the very end would be refused. */
  @ParameterizedTest
  @EnumSource
  void noTemperatureLeavesTheFunctionByALastBit(ThermocoupleType type) {
    double below = type.highestEmfMv();
    double above = type.lowestEmfMv();
    for (int i = 0; i < 10_000; i++) {
      below = Math.nextDown(below);
      above = Math.nextUp(above);
      assertThat(type.temperatureC(below)).isLessThanOrEqualTo(type.highestC());
      assertThat(type.temperatureC(above)).isGreaterThanOrEqualTo(type.lowestInverseC());
    }
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {-6.459, 54.887, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void emfOutsideTheInverseIsRefused(double emfMv) {
    assertThatThrownBy(() -> K.temperatureC(emfMv))
        .isInstanceOf(OutOfRange.class)
        .hasMessage("%s mV is outside Type K: allowed -6.458 to 54.886 mV", emfMv);
  }

  @ParameterizedTest
  @ValueSource(doubles = {-270.1, 1372.1, Double.NaN, Double.POSITIVE_INFINITY})
  void temperatureOutsideTheFunctionIsRefused(double temperatureC) {
    assertThatThrownBy(() -> K.emfMv(temperatureC))
        .isInstanceOf(OutOfRange.class)
        .hasMessage("%s °C is outside Type K: allowed -270.000 to 1372.000 °C", temperatureC);
    assertThatThrownBy(() -> K.seebeckUvPerC(temperatureC)).isInstanceOf(OutOfRange.class);
  }

  @ParameterizedTest
  @EnumSource
  void everyTypeRefusesWhatItCannotHave(ThermocoupleType type) {
    double beyondMv = type.highestEmfMv() + 0.001;
    double belowMv = type.lowestEmfMv() - 0.001;

    assertThatThrownBy(() -> type.temperatureC(beyondMv)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> type.temperatureC(belowMv)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> type.temperatureC(Double.NaN)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> type.emfMv(type.lowestC() - 0.1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> type.emfMv(type.highestC() + 0.1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> type.emfMv(Double.NaN)).isInstanceOf(OutOfRange.class);
  }

  /** NIST Monograph 175: Type B falls to -0.0026 mV near 21 °C and is back at 0 near 42 °C. */
  @Test
  void typeBHasATemperatureFromTheFirstEmfThatMeansOnlyOne() {
    assertThat(B.emfMv(21)).isCloseTo(-0.0026, within(5e-5));
    assertThat(B.emfMv(42)).isNegative();
    assertThat(B.lowestEmfMv()).isBetween(0.0, 1e-5);
    assertThat(B.temperatureC(0.0001)).isBetween(42.14, 43.0);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -0.001, -0.0026})
  void typeBSaysWhyItHasNoTemperatureInTheCold(double emfMv) {
    assertThatThrownBy(() -> B.temperatureC(emfMv))
        .isInstanceOf(OutOfRange.class)
        .hasMessageEndingWith("below 42 °C one emf of Type B means two temperatures");
    assertThatThrownBy(() -> B.temperatureC(14))
        .hasMessageEndingWith("allowed more than 0 to 13.820 mV");
  }

  private static double worstErrorC(ThermocoupleType type, double lowC, double highC, int steps) {
    double worst = 0;
    for (int i = 0; i <= steps; i++) {
      double t = Math.min(lowC + (highC - lowC) * i / steps, highC);
      double error = Math.abs(type.temperatureC(type.emfMv(t)) - t);
      worst = Double.isNaN(error) ? Double.POSITIVE_INFINITY : Math.max(worst, error);
    }
    return worst;
  }
}
