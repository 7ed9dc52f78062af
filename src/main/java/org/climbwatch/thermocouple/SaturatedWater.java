package org.climbwatch.thermocouple;

/**
 * The temperature at which water boils at a pressure: the backward equation of region 4 of
 * IAPWS-IF97 (equation 31), and the air's pressure at an altitude by the standard atmosphere.
 *
 * @see "IAPWS R7-97(2012), 8.2; ISO 2533:1975 (ICAO Doc 7488), troposphere"
 */
final class SaturatedWater {
  /** n1 to n10 of table 34 of IAPWS R7-97, as printed. */
  private static final double[] N = {
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3
  };

  private static final double ZERO_CELSIUS_K = 273.15;

  /** ISO 2533: sea level pressure kPa, temperature K, lapse K/m, and g / (R * lapse). */
  private static final double SEA_LEVEL_KPA = 101.325;

  private static final double SEA_LEVEL_K = 288.15;
  private static final double LAPSE_K_PER_M = 0.0065;
  private static final double EXPONENT = 9.80665 / (287.05287 * LAPSE_K_PER_M);

  private SaturatedWater() {}

  /** K at MPa, from 0.000611 to 22.06 MPa. */
  static double temperatureK(double pressureMpa) {
    double b = StrictMath.sqrt(StrictMath.sqrt(pressureMpa));
    double e = b * b + N[2] * b + N[5];
    double f = N[0] * b * b + N[3] * b + N[6];
    double g = N[1] * b * b + N[4] * b + N[7];
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = N[9] + d;
    return (sum - Math.sqrt(sum * sum - 4 * (N[8] + N[9] * d))) / 2;
  }

  /** °C at which water boils under a pressure of the air, kPa. */
  static double boilingC(double pressureKpa) {
    return temperatureK(pressureKpa / 1000) - ZERO_CELSIUS_K;
  }

  /** kPa of the standard atmosphere at a geopotential altitude, m; up to 11,000. */
  static double standardPressureKpa(double altitudeM) {
    double ratio = 1 - LAPSE_K_PER_M * altitudeM / SEA_LEVEL_K;
    return SEA_LEVEL_KPA * StrictMath.pow(ratio, EXPONENT);
  }
}
