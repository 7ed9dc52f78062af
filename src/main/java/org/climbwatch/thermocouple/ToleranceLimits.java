package org.climbwatch.thermocouple;

import static org.climbwatch.thermocouple.ThermocoupleType.B;
import static org.climbwatch.thermocouple.ThermocoupleType.E;
import static org.climbwatch.thermocouple.ThermocoupleType.J;
import static org.climbwatch.thermocouple.ThermocoupleType.K;
import static org.climbwatch.thermocouple.ThermocoupleType.N;
import static org.climbwatch.thermocouple.ThermocoupleType.R;
import static org.climbwatch.thermocouple.ThermocoupleType.S;
import static org.climbwatch.thermocouple.ThermocoupleType.T;
import static org.climbwatch.thermocouple.ToleranceClass.ASTM_SPECIAL;
import static org.climbwatch.thermocouple.ToleranceClass.ASTM_STANDARD;
import static org.climbwatch.thermocouple.ToleranceClass.IEC_1;
import static org.climbwatch.thermocouple.ToleranceClass.IEC_2;

import java.util.Arrays;

/**
 * The limits of the tolerance classes: new wire, reference junction at 0 °C, °C.
 *
 * <p>IEC 60584-1 (in IEC 60584-2 until 2013) and ASTM E230. The standards' own text was not at
 * hand: every row was read in secondary tables that agree with one another (for IEC:
 * Thermo-Electra, Labfacility, Pico Technology, therncway.net; for ASTM: instrumentation.com,
 * pelicanwire.com, jms-se.com, therncway.net). Where they differ: ASTM R and S to 1480 °C (older
 * tables 1450), ASTM K below 0 °C 2 % (one sheet 1 %), ASTM N to 1260 °C (one sheet 1246). Left
 * out: IEC class 3, and the ASTM figures for special wire below 0 °C, which one source prints as a
 * suggestion only.
 */
final class ToleranceLimits {
  private static final ThermocoupleType[] TYPES = ThermocoupleType.values();
  private static final Limit[] NONE = {};

  /** By class and type, from the lowest range up. */
  private static final Limit[][] LIMITS =
      new Limit[ToleranceClass.values().length * TYPES.length][];

  static {
    Arrays.fill(LIMITS, NONE);
    put(IEC_1, T, greater(-40, 350, 0.5, 0.004));
    put(IEC_1, E, greater(-40, 800, 1.5, 0.004));
    put(IEC_1, J, greater(-40, 750, 1.5, 0.004));
    put(IEC_1, K, greater(-40, 1000, 1.5, 0.004));
    put(IEC_1, N, greater(-40, 1000, 1.5, 0.004));
    put(IEC_1, R, greater(0, 1100, 1, 0), new Limit(1100, 1600, 1, 0, 0.003));
    put(IEC_1, S, greater(0, 1100, 1, 0), new Limit(1100, 1600, 1, 0, 0.003));

    put(IEC_2, T, greater(-40, 350, 1, 0.0075));
    put(IEC_2, E, greater(-40, 900, 2.5, 0.0075));
    put(IEC_2, J, greater(-40, 750, 2.5, 0.0075));
    put(IEC_2, K, greater(-40, 1200, 2.5, 0.0075));
    put(IEC_2, N, greater(-40, 1200, 2.5, 0.0075));
    put(IEC_2, R, greater(0, 1600, 1.5, 0.0025));
    put(IEC_2, S, greater(0, 1600, 1.5, 0.0025));
    put(IEC_2, B, greater(600, 1700, 1.5, 0.0025));

    put(ASTM_STANDARD, T, greater(-200, 0, 1, 0.015), greater(0, 370, 1, 0.0075));
    put(ASTM_STANDARD, E, greater(-200, 0, 1.7, 0.01), greater(0, 870, 1.7, 0.005));
    put(ASTM_STANDARD, J, greater(0, 760, 2.2, 0.0075));
    put(ASTM_STANDARD, K, greater(-200, 0, 2.2, 0.02), greater(0, 1260, 2.2, 0.0075));
    put(ASTM_STANDARD, N, greater(0, 1260, 2.2, 0.0075));
    put(ASTM_STANDARD, R, greater(0, 1480, 1.5, 0.0025));
    put(ASTM_STANDARD, S, greater(0, 1480, 1.5, 0.0025));
    put(ASTM_STANDARD, B, greater(870, 1700, 0, 0.005));

    put(ASTM_SPECIAL, T, greater(0, 370, 0.5, 0.004));
    put(ASTM_SPECIAL, E, greater(0, 870, 1, 0.004));
    put(ASTM_SPECIAL, J, greater(0, 760, 1.1, 0.004));
    put(ASTM_SPECIAL, K, greater(0, 1260, 1.1, 0.004));
    put(ASTM_SPECIAL, N, greater(0, 1260, 1.1, 0.004));
    put(ASTM_SPECIAL, R, greater(0, 1480, 0.6, 0.001));
    put(ASTM_SPECIAL, S, greater(0, 1480, 0.6, 0.001));
    put(ASTM_SPECIAL, B, greater(870, 1700, 0, 0.0025));
  }

  private ToleranceLimits() {}

  /**
   * The greater of a fixed and a relative limit, and for one form a slope besides.
   *
   * @param fixedC °C
   * @param relative part of the temperature's size in °C
   * @param risePerC °C for each °C above the lowest of the range
   */
  private record Limit(
      double lowestC, double highestC, double fixedC, double relative, double risePerC) {
    boolean holds(double temperatureC) {
      return temperatureC >= lowestC && temperatureC <= highestC;
    }

    double atC(double temperatureC) {
      double rise = risePerC * (temperatureC - lowestC);
      return Math.max(fixedC + rise, relative * Math.abs(temperatureC));
    }
  }

  /** °C, or NaN where the class does not hold. */
  static double publishedC(
      ToleranceClass toleranceClass, ThermocoupleType type, double temperatureC) {
    for (Limit limit : of(toleranceClass, type)) {
      if (limit.holds(temperatureC)) {
        return limit.atC(temperatureC);
      }
    }
    return Double.NaN;
  }

  /**
   * °C by the formula of the range that holds or else of the nearest one. IEC names no class 1 for
   * Type B: that of class 2 stands in.
   */
  static double continuedC(
      ToleranceClass toleranceClass, ThermocoupleType type, double temperatureC) {
    Limit[] ranges = of(type == B && toleranceClass == IEC_1 ? IEC_2 : toleranceClass, type);
    int i = 0;
    while (i < ranges.length - 1 && temperatureC > ranges[i].highestC()) {
      i++;
    }
    return ranges[i].atC(temperatureC);
  }

  private static Limit greater(double lowestC, double highestC, double fixedC, double relative) {
    return new Limit(lowestC, highestC, fixedC, relative, 0);
  }

  private static void put(ToleranceClass toleranceClass, ThermocoupleType type, Limit... ranges) {
    LIMITS[index(toleranceClass, type)] = ranges;
  }

  private static Limit[] of(ToleranceClass toleranceClass, ThermocoupleType type) {
    return LIMITS[index(toleranceClass, type)];
  }

  private static int index(ToleranceClass toleranceClass, ThermocoupleType type) {
    return toleranceClass.ordinal() * TYPES.length + type.ordinal();
  }
}
