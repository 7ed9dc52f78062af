package org.climbwatch.thermocouple;

import java.util.OptionalDouble;

/**
 * How closely new wire follows its reference function, as bought. The figures and their sources are
 * in {@code ToleranceLimits}.
 */
public enum ToleranceClass {
  IEC_1("iec_1", "IEC 60584-1 class 1"),
  IEC_2("iec_2", "IEC 60584-1 class 2"),
  ASTM_STANDARD("astm_standard", "ASTM E230 standard limits"),
  ASTM_SPECIAL("astm_special", "ASTM E230 special limits");

  private final String word;
  private final String title;

  ToleranceClass(String word, String title) {
    this.word = word;
    this.title = title;
  }

  /** The standard and its class, for a reader. */
  public String title() {
    return title;
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
   * @return empty where the class does not hold: Type K of {@link #IEC_1} above 1000 °C, of {@link
   *     #IEC_2} above 1200 °C, and Type B of {@link #IEC_1} anywhere, since there is no such class
   */
  public OptionalDouble limitC(ThermocoupleType type, double temperatureC) {
    return holds(type, temperatureC)
        ? OptionalDouble.of(ToleranceLimits.publishedC(this, type, temperatureC))
        : OptionalDouble.empty();
  }

  /** Whether a limit is published for that type at that temperature. */
  public boolean holds(ThermocoupleType type, double temperatureC) {
    return !Double.isNaN(ToleranceLimits.publishedC(this, type, temperatureC));
  }
}
