package org.climbwatch.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferencePointTest {
  /** IAPWS R7-97(2012), table 36: values to verify a program by, MPa and K. */
  @ParameterizedTest
  @CsvSource({"0.1, 372.755919", "1, 453.035632", "10, 584.149488"})
  void waterBoilsAsTheIndustrialFormulationSays(double pressureMpa, double publishedK) {
    assertThat(SaturatedWater.temperatureK(pressureMpa)).isCloseTo(publishedK, within(5e-7));
  }

  /** The same release, table 35, whose pressures the backward equation must lead back. */
  @ParameterizedTest
  @CsvSource({"0.00353658941, 300", "2.63889776, 500", "12.3443146, 600"})
  void pressuresOfTheForwardEquationLeadBack(double pressureMpa, double publishedK) {
    assertThat(SaturatedWater.temperatureK(pressureMpa)).isCloseTo(publishedK, within(1e-6));
  }

  /** 99.974 °C is the normal boiling point by IAPWS (from memory). */
  @Test
  void waterBoilsAt99Point974UnderOneAtmosphere() {
    assertThat(SaturatedWater.boilingC(101.325)).isCloseTo(99.974, within(0.0006));
  }

  /**
   * US Standard Atmosphere 1976, whose troposphere is that of ISO 2533 and ICAO Doc 7488: Pa, from
   * 500 m up as the tests of a public weather library list them, those below the sea as
   * sensorsone.co.uk prints its table (hPa, -5000, -1000 and -500 ft).
   */
  @ParameterizedTest
  @CsvSource({
    "-1524, 121023",
    "-304.8, 105041",
    "-152.4, 103169",
    "0, 101325",
    "500, 95460.839",
    "1000, 89874.571",
    "1500, 84556.005",
    "2000, 79495.216",
    "2500, 74682.534",
    "3000, 70108.545",
    "4000, 61640.235",
    "5000, 54019.912"
  })
  void airPressesAsTheStandardAtmosphereSays(double altitudeM, double publishedPa) {
    assertThat(SaturatedWater.standardPressureKpa(altitudeM) * 1000)
        .isCloseTo(publishedPa, within(1e-5 * publishedPa));
  }

  @Test
  void barometerIsWorthMoreThanAnAltitude() {
    ReferencePoint barometer = ReferencePoint.boilingAtPressure(96.6, 0.2);
    ReferencePoint altitude = ReferencePoint.boilingAtAltitude(400);

    assertThat(barometer.temperatureC()).isCloseTo(98.64, within(0.005));
    assertThat(altitude.temperatureC()).isCloseTo(98.64, within(0.01));
    assertThat(barometer.expandedC()).isBetween(0.3, 0.32);
    // weather: 3.4 kPa at 0.28 °C/kPa over the root of 3, twice, is 1.1 °C
    assertThat(altitude.expandedC()).isBetween(1.1, 1.3);
    assertThat(altitude.name()).isEqualTo("boiling water at 400 m");
  }

  /** 0.28 °C/kPa at one atmosphere: common knowledge, from memory. */
  @Test
  void uncertaintyOfThePressureCountsThroughTheSaturationLine() {
    double none = ReferencePoint.boilingAtPressure(101.325, 0).expandedC();
    double with = ReferencePoint.boilingAtPressure(101.325, 1).expandedC();

    double partC = Math.sqrt(with * with - none * none);
    double riseC = SaturatedWater.boilingC(101.825) - SaturatedWater.boilingC(100.825);
    assertThat(partC).isCloseTo(riseC, within(1e-9)).isCloseTo(0.28, within(0.005));
  }

  @Test
  void iceIsAtZero() {
    assertThat(ReferencePoint.ice()).isEqualTo(new ReferencePoint("ice point", 0, 0.2));
  }

  @Test
  void placesWhereNobodyFiresAreRefused() {
    assertThatThrownBy(() -> ReferencePoint.boilingAtAltitude(6000))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("6000.0 m is out of range; allowed: -500 to 5000");
    assertThatThrownBy(() -> ReferencePoint.boilingAtPressure(1013, 0))
        .hasMessageContaining("1013.0 kPa is out of range; allowed: 50 to 110");
    assertThatThrownBy(() -> ReferencePoint.boilingAtPressure(Double.NaN, 0))
        .hasMessageContaining("kPa");
    assertThatThrownBy(() -> new ReferencePoint("other", 900, -1)).hasMessageContaining("0 to 100");
  }

  @Test
  void comparisonMakesAPoint() {
    Comparison comparison = new Comparison(956, 0.4, new ReferencePoint("Type S", 950, 3));

    Correction.Point point = comparison.point();

    assertThat(point.atC()).isEqualTo(956);
    assertThat(point.addC()).isEqualTo(-6);
    assertThat(point.expandedC()).isCloseTo(Math.sqrt(9.16), within(1e-12));
  }

  /**
   * By hand: corrections -6, -5 and -7 °C, mean -6, standard deviation 1, of the mean 0.577; t for
   * 2 degrees of freedom 4.30 (GUM, table G.2): 2.48. With the reference's 3: 3.89.
   */
  @Test
  void repeatsMergeToTheirMeanWithTheirScatter() {
    ReferencePoint other = new ReferencePoint("Type S", 950, 3);
    Correction correction =
        Comparison.correction(
            List.of(
                new Comparison(957, 0.3, other),
                new Comparison(100, 0.1, ReferencePoint.boilingAtPressure(101.325, 0)),
                new Comparison(956, 0.3, other),
                new Comparison(955, 0.3, other)),
            5);

    assertThat(correction.points()).hasSize(2);
    Correction.Point merged = correction.points().get(1);
    assertThat(merged.atC()).isCloseTo(956, within(1e-9));
    assertThat(merged.addC()).isCloseTo(-6, within(1e-9));
    assertThat(merged.expandedC()).isCloseTo(3.89, within(0.01));
  }

  @Test
  void repeatsThatAgreeByChanceAreNotTakenForExact() {
    Comparison ice = new Comparison(0.5, 0.3, ReferencePoint.ice());

    Correction.Point point = Comparison.correction(List.of(ice, ice), 5).points().get(0);

    // 0.3 over the root of 2, with the bath's own 0.2
    assertThat(point.expandedC()).isCloseTo(Math.hypot(0.3 / Math.sqrt(2), 0.2), within(1e-12));
  }

  @Test
  void comparisonsFarApartStayPointsOfTheirOwn() {
    Comparison hotter = new Comparison(106, 0, new ReferencePoint("other", 105, 1));
    Comparison colder = new Comparison(100, 0, new ReferencePoint("other", 100, 1));

    assertThat(Comparison.correction(List.of(hotter, colder), 5).points())
        .containsExactly(colder.point(), hotter.point());
    assertThat(Comparison.correction(List.of(), 5)).isEqualTo(Correction.NONE);
  }

  @Test
  void readingThatIsNoneIsRefused() {
    assertThatThrownBy(() -> new Comparison(Double.NaN, 0, ReferencePoint.ice()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("allowed: -270 to 1820, 0 to 100");
  }
}
