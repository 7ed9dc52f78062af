package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Emfs and slopes against what is printed, in both directions. Type K has its own table in {@link
 * ThermocoupleTypeTest}; of R and S no whole printed table was at hand, so theirs is that of a
 * reference library, and beside it the print of several publications. Over the whole range of all
 * stands {@link CoefficientFileTest}: the published inverses, a fit of their own, lie within their
 * published errors of the forward functions.
 */
class PublishedTablesTest {
  private static final List<Printed> TABLES = tables();

  /** mV: half of the last printed digit. */
  private static final double HALF_DIGIT_MV = 0.0005;

  private record Printed(ThermocoupleType type, double temperatureC, double emfMv) {}

  @Test
  void wholeTablesAreLookedAt() {
    assertThat(of(ThermocoupleType.B)).hasSize(178);
    assertThat(of(ThermocoupleType.E)).hasSize(128);
    assertThat(of(ThermocoupleType.J)).hasSize(142);
    assertThat(of(ThermocoupleType.N)).hasSize(158);
    assertThat(of(ThermocoupleType.T)).hasSize(68);
    assertThat(of(ThermocoupleType.R)).hasSize(182);
    assertThat(of(ThermocoupleType.S)).hasSize(182);
  }

  /**
   * NIST SRD 60, tables of types B, E, J, N and T, printed to 0.001 mV; and R and S to 0.001 mV by
   * the package thermocouples_reference 0.16.
   */
  @Test
  void givesEveryPrintedEmf() {
    for (Printed row : TABLES) {
      assertThat(Math.rint(row.type.emfMv(row.temperatureC) * 1000) / 1000)
          .as("%s", row)
          .isCloseTo(row.emfMv, within(1e-9));
    }
  }

  /** The same tables backwards: half a printed digit is the most that its rounding can move. */
  @Test
  void givesEveryTemperatureFromItsPrintedEmf() {
    int seen = 0;
    for (Printed row : TABLES) {
      if (row.temperatureC >= row.type.lowestInverseC()) {
        seen++;
        // the print of the first and the last row may be rounded to past the end
        double emfMv =
            Math.max(Math.min(row.emfMv, row.type.highestEmfMv()), row.type.lowestEmfMv());
        assertThat(row.type.temperatureC(emfMv))
            .as("%s", row)
            .isCloseTo(
                row.temperatureC,
                within(1010 * HALF_DIGIT_MV / row.type.seebeckUvPerC(row.temperatureC)));
      }
    }
    assertThat(seen).isGreaterThan(960);
  }

  /**
   * 350 °C: thermibel.be. 1000 °C: the straight line of the MAX31855 data sheet (19-5793) is
   * E(1000) / 1000. Others: the ends of the inverse polynomials as NIST SRD 60 prints them, and its
   * values that the tests of the package thermocouple-its90 repeat.
   */
  @ParameterizedTest
  @CsvSource({
    "R, -50, -0.226",
    "R, 250, 1.923",
    "R, 350, 2.896",
    "R, 1000, 10.506",
    "R, 1064, 11.361",
    "R, 1200, 13.228",
    "R, 1600, 18.849",
    "R, 1664.5, 19.739",
    "R, 1768.1, 21.103",
    "S, -50, -0.235",
    "S, 250, 1.874",
    "S, 350, 2.786",
    "S, 1000, 9.587",
    "S, 1064, 10.332",
    "S, 1200, 11.950",
    "S, 1400, 14.373",
    "S, 1664.5, 17.536",
    "S, 1768.1, 18.693"
  })
  void platinumTypesGiveWhatSeveralPublicationsPrint(
      ThermocoupleType type, double temperatureC, double printedMv) {
    assertThat(type.emfMv(temperatureC)).isCloseTo(printedMv, within(0.00101));
    double backC = type.temperatureC(Math.min(printedMv, type.highestEmfMv()));
    assertThat(backC).isCloseTo(temperatureC, within(1.2 / type.seebeckUvPerC(temperatureC)));
  }

  /**
   * NIST's slope of Type T from 0 to 40 °C, mV/°C, as the vignette of the R package sapflux quotes
   * it ("Calculating seebeck coefficients").
   */
  @Test
  void typeTSlopesAreThoseOfNist() {
    double[] printedMvPerC = {
      0.038748, 0.038815, 0.038884, 0.038953, 0.039024, 0.039095, 0.039168, 0.039242, 0.039316,
      0.039391, 0.039468, 0.039545, 0.039622, 0.039701, 0.039780, 0.039859, 0.039939, 0.040020,
      0.040101, 0.040183, 0.040265, 0.040348, 0.040431, 0.040515, 0.040598, 0.040682, 0.040767,
      0.040851, 0.040936, 0.041021, 0.041106, 0.041192, 0.041277, 0.041363, 0.041449, 0.041534,
      0.041620, 0.041706, 0.041792, 0.041878, 0.041964
    };
    for (int t = 0; t < printedMvPerC.length; t++) {
      assertThat(ThermocoupleType.T.seebeckUvPerC(t))
          .as("slope at %d °C", t)
          .isCloseTo(printedMvPerC[t] * 1000, within(0.00101));
    }
  }

  /**
   * T. W. Kerlin, Practical Thermocouple Thermometry (ISA, 1999), nominal coefficients, µV/°C, as
   * the documentation of the R package thermocouple repeats them. Nominal, so 2.5 %. Its Type N at
   * 1200 °C (33.1) is left out: NIST's table rises by 0.743 mV from 1190 to 1210, which is 37.2.
   */
  @ParameterizedTest
  @CsvSource({
    "E, '-190:27.3 -100:44.8 0:58.5 200:74.5 400:80 600:81 800:78.5'",
    "J, '-190:24.2 -100:41.4 0:50.2 200:55.8 400:55.3 600:58.5 800:64.3'",
    "K, '-190:17.1 -100:30.6 0:39.4 200:40 400:42.3 600:42.6 800:41 1000:39 1200:36.5'",
    "N, '-190:11.2 -100:20.9 0:26.1 200:32.9 400:37.1 600:38.9 800:39.2 1000:38.5'",
    "R, '200:8.8 400:10.5 600:11.5 800:12.3 1000:13 1200:13.8 1400:13.8'",
    "S, '200:8.5 400:9.5 600:10.3 800:11 1000:11.5 1200:12 1400:12'",
    "T, '-190:17.1 -100:28.4 0:38 200:53'",
    "B, '200:2 400:4 600:6 800:7.7 1000:9.2 1200:10.3 1400:11.3'"
  })
  void slopesAreTheNominalOnes(ThermocoupleType type, String printed) {
    for (String pair : printed.split(" ")) {
      String[] cell = pair.split(":");
      double printedUvPerC = Double.parseDouble(cell[1]);
      assertThat(type.seebeckUvPerC(Double.parseDouble(cell[0])))
          .as("%s at %s °C", type, cell[0])
          .isCloseTo(printedUvPerC, within(0.025 * printedUvPerC));
    }
  }

  /**
   * MAX31855 data sheet, 19-5793: mean slope from 0 to 70 °C, µV/°C. Its 44.123 for Type E is left
   * out: NIST's table rises by 4.330 mV over that span, which is 61.9.
   */
  @ParameterizedTest
  @CsvSource({"K, 40.73", "J, 52.136", "N, 27.171", "S, 6.181", "T, 41.56", "R, 6.158"})
  void meanSlopeOfTheTerminalsIsThatOfTheDataSheet(ThermocoupleType type, double printedUvPerC) {
    assertThat(type.emfMv(70) / 70 * 1000).isCloseTo(printedUvPerC, within(0.003 * printedUvPerC));
  }

  /** A slope is the rise of the printed table from one row to the next but one. */
  @ParameterizedTest
  @EnumSource(names = {"B", "E", "J", "N", "R", "S", "T"})
  void slopesAreTheRisesOfThePrintedTable(ThermocoupleType type) {
    List<Printed> rows = of(type);
    for (int i = 1; i < rows.size() - 1; i++) {
      Printed low = rows.get(i - 1);
      Printed high = rows.get(i + 1);
      double riseUvPerC = (high.emfMv - low.emfMv) / (high.temperatureC - low.temperatureC) * 1000;
      // two half digits over 20 °C, and what the slope bends over them
      assertThat(type.seebeckUvPerC(rows.get(i).temperatureC))
          .as("%s", rows.get(i))
          .isCloseTo(riseUvPerC, within(0.08 + 0.002 * Math.abs(riseUvPerC)));
    }
  }

  private static List<Printed> of(ThermocoupleType type) {
    return TABLES.stream().filter(row -> row.type == type).toList();
  }

  private static List<Printed> tables() {
    List<Printed> rows = new ArrayList<>();
    List<String[]> cells = new ArrayList<>(Table.rows("emf-every-10c.csv"));
    cells.addAll(Table.rows("platinum-every-10c.csv"));
    for (String[] cell : cells) {
      for (int i = 2; i < cell.length; i++) {
        rows.add(
            new Printed(
                ThermocoupleType.valueOf(cell[0]),
                Double.parseDouble(cell[1]) + 10 * (i - 2),
                Double.parseDouble(cell[i])));
      }
    }
    return rows;
  }
}
