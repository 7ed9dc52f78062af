package org.climbwatch.thermocouple;

import java.util.Locale;

/**
 * A temperature that is known better than the probe knows it, to compare the probe with.
 *
 * @param name what it is
 * @param temperatureC °C
 * @param expandedC °C, expanded uncertainty, k = 2
 */
public record ReferencePoint(String name, double temperatureC, double expandedC) {
  /**
   * °C, k = 2: clean crushed ice just wetted, of tap water, stirred, the probe deep in it. Common
   * practice, from memory; a bath by ASTM E563 of distilled water is far better.
   */
  private static final double ICE_EXPANDED_C = 0.2;

  /**
   * °C, k = 2, besides the pressure's: tap water, a rolling boil, the probe a few centimetres under
   * (10 cm of water add 1 kPa, 0.3 °C) and clear of the pot. Common practice, from memory.
   */
  private static final double BOIL_EXPANDED_C = 0.3;

  /**
   * kPa: weather seldom moves the pressure reduced to sea level further from its mean (one inch of
   * mercury, 3.386 kPa, by common weather guides). Taken as a limit, so rectangular.
   */
  private static final double WEATHER_KPA = 3.4;

  /** kPa, limit: an altitude off a map and a standard atmosphere that the day's air is not. */
  private static final double ALTITUDE_KPA = 0.6;

  public ReferencePoint {
    require(temperatureC >= -270 && temperatureC <= 1820, temperatureC, "°C", "-270 to 1820");
    require(expandedC >= 0 && expandedC <= 100, expandedC, "°C of uncertainty", "0 to 100");
  }

  /** Melting ice, 0 °C. */
  public static ReferencePoint ice() {
    return new ReferencePoint("ice point", 0, ICE_EXPANDED_C);
  }

  /**
   * Boiling water under a pressure read on a barometer at the place (not the one that a weather
   * report has reduced to sea level).
   *
   * @param pressureKpa kPa, 50 to 110
   * @param pressureExpandedKpa kPa, its expanded uncertainty, k = 2
   * @throws IllegalArgumentException outside that range
   */
  public static ReferencePoint boilingAtPressure(double pressureKpa, double pressureExpandedKpa) {
    require(pressureKpa >= 50 && pressureKpa <= 110, pressureKpa, "kPa", "50 to 110");
    require(
        pressureExpandedKpa >= 0 && pressureExpandedKpa <= 10,
        pressureExpandedKpa,
        "kPa of uncertainty",
        "0 to 10");
    String name = String.format(Locale.ROOT, "boiling water at %.1f kPa", pressureKpa);
    return boiling(name, pressureKpa, pressureExpandedKpa);
  }

  /**
   * Boiling water at an altitude. The weather of the day is not known and is counted in the
   * uncertainty: about 1.1 °C, so a barometer is worth having.
   *
   * @param altitudeM m above the sea, -500 to 5000
   * @throws IllegalArgumentException outside that range
   */
  public static ReferencePoint boilingAtAltitude(double altitudeM) {
    require(altitudeM >= -500 && altitudeM <= 5000, altitudeM, "m", "-500 to 5000");
    double limits = Math.sqrt(WEATHER_KPA * WEATHER_KPA + ALTITUDE_KPA * ALTITUDE_KPA);
    String name = String.format(Locale.ROOT, "boiling water at %.0f m", altitudeM);
    return boiling(
        name,
        SaturatedWater.standardPressureKpa(altitudeM),
        Uncertainty.COVERAGE * limits / Math.sqrt(3));
  }

  private static ReferencePoint boiling(String name, double pressureKpa, double expandedKpa) {
    double boilingC = SaturatedWater.boilingC(pressureKpa);
    double slopeCPerKpa =
        (SaturatedWater.boilingC(pressureKpa + 0.5) - SaturatedWater.boilingC(pressureKpa - 0.5));
    double fromPressureC = slopeCPerKpa * expandedKpa;
    double expandedC = Math.sqrt(fromPressureC * fromPressureC + BOIL_EXPANDED_C * BOIL_EXPANDED_C);
    return new ReferencePoint(name, boilingC, expandedC);
  }

  private static void require(boolean holds, double value, String unit, String allowed) {
    if (!holds) {
      throw new IllegalArgumentException(
          "reference point: " + value + " " + unit + " is out of range; allowed: " + allowed);
    }
  }
}
