package org.climbwatch.thermocouple;

import java.util.OptionalDouble;

/**
 * How closely new wire follows its reference function: the greater of a fixed and a relative limit.
 *
 * <p>The limits of the upper range of each class, read from secondary tables of IEC 60584-1 and
 * ASTM E230 that agree with one another. IEC names no class 1 for Type B: class 2 stands in.
 */
public enum ToleranceClass {
  IEC_1("iec_1"),
  IEC_2("iec_2"),
  ASTM_STANDARD("astm_standard"),
  ASTM_SPECIAL("astm_special");

  private final String word;

  ToleranceClass(String word) {
    this.word = word;
  }

  /** The word of the configuration. */
  public String word() {
    return word;
  }

  /**
   * The class of a word of the configuration.
   *
   * @throws IllegalArgumentException for any other word; the message names the allowed ones
   */
  public static ToleranceClass ofWord(String word) {
    for (ToleranceClass each : values()) {
      if (each.word.equals(word)) {
        return each;
      }
    }
    throw new IllegalArgumentException(
        "unknown tolerance class \""
            + word
            + "\"; allowed: iec_1, iec_2, astm_standard, astm_special");
  }

  /**
   * °C by which new wire may deviate, up or down.
   *
   * @return empty where the class does not hold at that temperature
   */
  public OptionalDouble limitC(ThermocoupleType type, double temperatureC) {
    Limit limit = Limit.of(this, type);
    return temperatureC >= limit.lowestC() && temperatureC <= limit.highestC()
        ? OptionalDouble.of(limit.atC(temperatureC))
        : OptionalDouble.empty();
  }

  /** The class's formula continued past its range, for an estimate where none is published. */
  double continuedLimitC(ThermocoupleType type, double temperatureC) {
    return Limit.of(this, type).atC(temperatureC);
  }

  private record Limit(double lowestC, double highestC, double fixedC, double relative) {
    double atC(double temperatureC) {
      return Math.max(fixedC, relative * Math.abs(temperatureC));
    }

    static Limit of(ToleranceClass toleranceClass, ThermocoupleType type) {
      return switch (toleranceClass) {
        case IEC_1 -> iec1(type);
        case IEC_2 -> iec2(type);
        case ASTM_STANDARD -> astmStandard(type);
        case ASTM_SPECIAL -> astmSpecial(type);
      };
    }

    /** R and S from 1100 °C on have a rising limit of another form; its start is used. */
    private static Limit iec1(ThermocoupleType type) {
      return switch (type) {
        case K, N -> new Limit(-40, 1000, 1.5, 0.004);
        case E -> new Limit(-40, 800, 1.5, 0.004);
        case J -> new Limit(-40, 750, 1.5, 0.004);
        case T -> new Limit(-40, 350, 0.5, 0.004);
        case R, S -> new Limit(0, 1100, 1.0, 0);
        case B -> iec2(type);
      };
    }

    private static Limit iec2(ThermocoupleType type) {
      return switch (type) {
        case K, N -> new Limit(-40, 1200, 2.5, 0.0075);
        case E -> new Limit(-40, 900, 2.5, 0.0075);
        case J -> new Limit(-40, 750, 2.5, 0.0075);
        case T -> new Limit(-40, 350, 1.0, 0.0075);
        case R, S -> new Limit(0, 1600, 1.5, 0.0025);
        case B -> new Limit(600, 1700, 1.5, 0.0025);
      };
    }

    private static Limit astmStandard(ThermocoupleType type) {
      return switch (type) {
        case K, N -> new Limit(0, 1260, 2.2, 0.0075);
        case E -> new Limit(0, 870, 1.7, 0.005);
        case J -> new Limit(0, 760, 2.2, 0.0075);
        case T -> new Limit(0, 370, 1.0, 0.0075);
        case R, S -> new Limit(0, 1480, 1.5, 0.0025);
        case B -> new Limit(870, 1700, 0, 0.005);
      };
    }

    private static Limit astmSpecial(ThermocoupleType type) {
      return switch (type) {
        case K, N -> new Limit(0, 1260, 1.1, 0.004);
        case E -> new Limit(0, 870, 1.0, 0.004);
        case J -> new Limit(0, 760, 1.1, 0.004);
        case T -> new Limit(0, 370, 0.5, 0.004);
        case R, S -> new Limit(0, 1480, 0.6, 0.001);
        case B -> new Limit(870, 1700, 0, 0.0025);
      };
    }
  }
}
