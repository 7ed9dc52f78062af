package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BudgetTest {
  private static final ThermocoupleType K = ThermocoupleType.K;
  private static final Path PAGE = Path.of("docs/uncertainty.md");

  /** MAX31855 data sheet, 19-5793: 4 °C and steps of 0.25 °C on a line of 41.276 µV/°C. */
  private static final ProbeErrors STRAIGHT_LINE =
      new ProbeErrors(0, 4 * 41.276, 0, 2, 0, 0.25 * 41.276, 0);

  private static final Budget UNCALIBRATED =
      Budget.of(new MeasuringChain(K, ToleranceClass.IEC_2, STRAIGHT_LINE), 1004, 31, 0.3, 8);

  private static final Correction BOILED_AND_COMPARED =
      new Correction(
          List.of(new Correction.Point(99.2, -0.7, 1.2), new Correction.Point(956, -6, 3.2)));

  private static final Budget CALIBRATED =
      Budget.of(
          new MeasuringChain(
              K,
              ToleranceClass.IEC_1,
              new ProbeErrors(0, 8, 1500, 0.5, 0, 7.8125, 0),
              BOILED_AND_COMPARED),
          980,
          28,
          0.4,
          16);

  /** Worked by hand on the page, from the printed table of Type K and the data sheets. */
  @Test
  void budgetsOfThePageAreTheProgramsToThreeDigits() throws IOException {
    List<String> page = Files.readAllLines(PAGE);
    List<String> rows = page.stream().filter(line -> line.matches("(\\| [^|]+){7}\\|")).toList();
    List<String> budgetRows = rows.stream().filter(row -> !row.contains("| source |")).toList();

    assertThat(budgetRows).hasSize(20);
    assertThat(budgetRows.subList(0, 10)).isEqualTo(rows(UNCALIBRATED));
    assertThat(budgetRows.subList(10, 20)).isEqualTo(rows(CALIBRATED));
    assertThat(page).contains(sentence(UNCALIBRATED), sentence(CALIBRATED));
  }

  /** The sum of the page, from its own rounded numbers. */
  @Test
  void sumOfThePageByHand() {
    double combinedC =
        Math.sqrt(4.35 * 4.35 + 2.45 * 2.45 + 1.21 * 1.21 + 0.0765 * 0.0765 + 0.106 * 0.106);

    assertThat(UNCALIBRATED.combinedC()).isCloseTo(combinedC, within(0.01));
    assertThat(UNCALIBRATED.expandedC()).isCloseTo(10.3, within(0.05));
  }

  @Property
  void budgetAndTheUncertaintyOfAReadingAreEqualToTheLastBit(
      @ForAll ThermocoupleType type,
      @ForAll ToleranceClass toleranceClass,
      @ForAll boolean calibrated,
      @ForAll @DoubleRange(min = 0, max = 1) double part,
      @ForAll @DoubleRange(min = 0, max = 85) double coldC,
      @ForAll @DoubleRange(min = 0, max = 10) double spreadC,
      @ForAll @IntRange(min = 1, max = 100) int samples) {
    MeasuringChain chain =
        new MeasuringChain(type, toleranceClass, new ProbeErrors(3, 7, 900, 1.5, 0.1, 5, 2))
            .with(calibrated ? BOILED_AND_COMPARED : Correction.NONE);
    double lowC = type.lowestInverseC();
    double readC = Math.min(lowC + part * (type.highestC() - lowC), type.highestC());

    assertThat(Budget.of(chain, readC, coldC, spreadC, samples).expandedC())
        .isEqualTo(Uncertainty.expandedC(chain, readC, coldC, spreadC, samples));
  }

  @Test
  void correctionMovesTheTemperatureAndStandsInForTheLimitsAtItsPoints() {
    MeasuringChain chain =
        new MeasuringChain(
            K, ToleranceClass.IEC_2, ProbeErrors.inDegrees(4, 2), BOILED_AND_COMPARED);

    Budget atPoint = Budget.of(chain, 956, 25, 0, 1);

    assertThat(atPoint.temperatureC()).isEqualTo(950);
    assertThat(standardC(atPoint, "wire")).isZero();
    assertThat(standardC(atPoint, "amplifier")).isZero();
    assertThat(standardC(atPoint, "calibration")).isEqualTo(1.6);
    assertThat(standardC(atPoint, "cold junction")).isGreaterThan(1);
  }

  /** Far from all points a calibration cannot make a reading better than its wire. */
  @Test
  void iceAloneSaysLittleOfTheFire() {
    MeasuringChain bare = new MeasuringChain(K, ToleranceClass.IEC_2, ProbeErrors.inDegrees(4, 2));
    MeasuringChain iced = bare.with(new Correction(List.of(new Correction.Point(0.5, -0.5, 0.2))));

    double bareC = Uncertainty.expandedC(bare, 1200, 25);
    assertThat(Uncertainty.expandedC(iced, 1200, 25)).isBetween(0.99 * bareC, bareC + 0.1);
  }

  @Test
  void saysWhereNoToleranceClassHolds() {
    MeasuringChain chain = new MeasuringChain(K, ToleranceClass.IEC_2, ProbeErrors.inDegrees(4, 2));

    assertThat(Budget.of(chain, 1250, 25, 0, 1).notes().get(0))
        .isEqualTo(
            "No tolerance class holds here: IEC 60584-1 class 2 is not published for Type K at"
                + " 1250 °C. Its formula is continued, an estimate that nobody warrants.");
    assertThat(Budget.of(chain, 1200, 25, 0, 1).notes().toString())
        .doesNotContain("tolerance class")
        .contains("drifted is not counted")
        .contains("heat of the ware");
  }

  @Test
  void statedDriftIsCountedAndNotExcused() {
    Budget budget =
        Budget.of(
            new MeasuringChain(K, ToleranceClass.IEC_2, new ProbeErrors(0, 0, 0, 0, 0, 0, 9)),
            1000,
            25,
            0,
            1);

    assertThat(standardC(budget, "drift")).isCloseTo(9 / Math.sqrt(3), within(1e-12));
    assertThat(budget.notes().toString()).doesNotContain("drifted");
  }

  /** GUM, 7.2.6: one or two digits, the value to match; 28.05 and 10.47 are its own examples. */
  @ParameterizedTest
  @CsvSource({
    "1004.2, 8.1, 1004 ± 8 °C",
    "1004.2, 9.7, 1004 ± 10 °C",
    "1004.2, 10.14, 1004 ± 10 °C",
    "1004.2, 10.47, 1004 ± 10 °C",
    "1004.2, 28.05, 1004 ± 28 °C",
    "1004.26, 3.27, 1004.3 ± 3.3 °C",
    "1004.26, 4.96, 1004.3 ± 5.0 °C",
    "1004.2, 5.4, 1004 ± 6 °C",
    "1004.2, 0.97, 1004.2 ± 1.0 °C",
    "1004.2, 123, 1000 ± 120 °C",
    "-0.04, 1.62, 0.0 ± 1.6 °C",
    "-12.345, 0.0301, -12.345 ± 0.030 °C",
    "0.5, 0, 0.500 ± 0.000 °C"
  })
  void textHasNoDigitThatSaysNothing(double value, double uncertainty, String text) {
    assertThat(Rounding.text(value, uncertainty)).isEqualTo(text);
  }

  @Test
  void impossibleInputsAreRefused() {
    MeasuringChain chain = new MeasuringChain(K, ToleranceClass.IEC_2, ProbeErrors.inDegrees(4, 2));

    assertThatThrownBy(() -> Budget.of(chain, 1400, 25, 0, 1)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> Budget.of(chain, 1000, 25, -1, 1)).hasMessageContaining("allowed");
    assertThatThrownBy(() -> Uncertainty.expandedC(chain, 1000, 25, 0, 0))
        .hasMessageContaining("over 0 samples; allowed: 0 up, 1 up");
    assertThatThrownBy(() -> ProbeErrors.inDegrees(51, 0))
        .hasMessage("amplifierErrorC must be 0 to 50.0, was 51.0");
    assertThatThrownBy(() -> new ProbeErrors(0, 0, 0, 0, 0, Double.NaN, 0))
        .hasMessageContaining("stepUv");
  }

  private static double standardC(Budget budget, String name) {
    return budget.components().stream()
        .filter(each -> each.name().equals(name))
        .findFirst()
        .orElseThrow()
        .standardC();
  }

  private static List<String> rows(Budget budget) {
    return budget.components().stream()
        .map(
            each ->
                String.format(
                    Locale.ROOT,
                    "| %s | %s | %.3g | %s | %.3g | %.3g | %.3g |",
                    each.name(),
                    each.from(),
                    each.value(),
                    each.unit(),
                    each.divisor(),
                    each.sensitivity(),
                    each.standardC()))
        .toList();
  }

  private static String sentence(Budget budget) {
    return String.format(
        Locale.ROOT,
        "Combined %.3g °C, expanded %.3g °C, shown as **%s**.",
        budget.combinedC(),
        budget.expandedC(),
        budget.text());
  }
}
