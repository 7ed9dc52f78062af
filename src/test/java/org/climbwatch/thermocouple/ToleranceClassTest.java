package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ToleranceClassTest {
  private static final Map<String, ToleranceClass> CLASSES =
      Map.of(
          "IEC 60584-1 1", ToleranceClass.IEC_1,
          "IEC 60584-1 2", ToleranceClass.IEC_2,
          "ASTM E230 standard", ToleranceClass.ASTM_STANDARD,
          "ASTM E230 special", ToleranceClass.ASTM_SPECIAL);

  private static final List<Row> ROWS = rows();

  /** A row of the table: the class holds for a type over a range. */
  private record Row(
      ToleranceClass toleranceClass,
      ThermocoupleType type,
      double lowC,
      double highC,
      String fixedC,
      String relative) {
    double limitC(double t) {
      // blank in the table: its note gives 1 + 0.003 (t - 1100)
      return fixedC.isEmpty()
          ? 1 + 0.003 * (t - 1100)
          : Math.max(Double.parseDouble(fixedC), Double.parseDouble(relative) * Math.abs(t));
    }
  }

  /** Secondary tables of IEC 60584-1 and ASTM E230, named in tolerances.csv beside this test. */
  @Test
  void everyRowOfTheTableIsGiven() {
    assertThat(ROWS).hasSize(36);
    for (Row row : ROWS) {
      for (int i = 0; i <= 40; i++) {
        double t = row.lowC + (row.highC - row.lowC) * (i + 0.5) / 41;
        assertThat(row.toleranceClass.limitC(row.type, t).orElse(Double.NaN))
            .as("%s at %s °C", row, t)
            .isCloseTo(row.limitC(t), within(1e-12));
        assertThat(row.toleranceClass.holds(row.type, t)).isTrue();
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void classIsEmptyWhereNoRowOfTheTableHolds(ToleranceClass toleranceClass) {
    for (ThermocoupleType type : ThermocoupleType.values()) {
      for (double t = -270.5; t < 1900; t += 1) {
        double at = t;
        boolean published =
            ROWS.stream()
                .anyMatch(
                    row ->
                        row.toleranceClass == toleranceClass
                            && row.type == type
                            && at >= row.lowC
                            && at <= row.highC);
        assertThat(toleranceClass.limitC(type, t).isPresent())
            .as("%s of Type %s at %s °C", toleranceClass, type, t)
            .isEqualTo(published);
      }
    }
  }

  @Test
  void typeKEndsWhereTheStandardsEndIt() {
    assertThat(ToleranceClass.IEC_1.limitC(ThermocoupleType.K, 1000)).hasValue(4.0);
    assertThat(ToleranceClass.IEC_1.limitC(ThermocoupleType.K, 1000.1)).isEmpty();
    assertThat(ToleranceClass.IEC_2.limitC(ThermocoupleType.K, 200)).hasValue(2.5);
    assertThat(ToleranceClass.IEC_2.limitC(ThermocoupleType.K, 1200)).hasValue(9.0);
    assertThat(ToleranceClass.IEC_2.limitC(ThermocoupleType.K, 1200.1)).isEmpty();
    assertThat(ToleranceClass.ASTM_STANDARD.limitC(ThermocoupleType.K, 1260)).hasValue(9.45);
    assertThat(ToleranceClass.ASTM_SPECIAL.limitC(ThermocoupleType.K, 1260)).hasValue(5.04);
  }

  @ParameterizedTest
  @EnumSource
  void notANumberIsInNoClass(ToleranceClass toleranceClass) {
    assertThat(toleranceClass.limitC(ThermocoupleType.K, Double.NaN)).isEmpty();
  }

  @Test
  void wordsOfTheConfigurationNameTheClasses() {
    for (ToleranceClass each : ToleranceClass.values()) {
      assertThat(ToleranceClass.ofWord(each.word())).isEqualTo(each);
    }
    assertThat(ToleranceClass.ofWord("iec_1")).isEqualTo(ToleranceClass.IEC_1);
    assertThatThrownBy(() -> ToleranceClass.ofWord("IEC 1"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("IEC 1")
        .hasMessageContaining("iec_1, iec_2, astm_standard, astm_special");
  }

  private static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (String[] cell : Table.rows("tolerances.csv")) {
      ToleranceClass toleranceClass = CLASSES.get(cell[0] + " " + cell[2]);
      if (toleranceClass != null) {
        rows.add(
            new Row(
                toleranceClass,
                ThermocoupleType.valueOf(cell[1]),
                Double.parseDouble(cell[3]),
                Double.parseDouble(cell[4]),
                cell[5],
                cell[6]));
      }
    }
    return rows;
  }
}
