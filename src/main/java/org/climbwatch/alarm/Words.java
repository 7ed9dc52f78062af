package org.climbwatch.alarm;

import java.util.Locale;

/** How numbers and times read in a message. */
final class Words {
  private Words() {}

  /** Whole degrees, with a true minus sign: {@code 1004 °C}. */
  static String degrees(double celsius) {
    String digits = String.format(Locale.ROOT, "%.0f °C", Math.abs(celsius));
    return celsius <= -0.5 ? "−" + digits : digits;
  }

  /** Whole degrees an hour with a true minus sign for a fall: {@code −120 °C/h}. */
  static String perHour(double cPerHour) {
    String digits = String.format(Locale.ROOT, "%.0f °C/h", Math.abs(cPerHour));
    return cPerHour <= -0.5 ? "−" + digits : digits;
  }

  /** Degrees with one decimal, without a sign: {@code 6.4 °C}. */
  static String fineDegrees(double celsius) {
    return String.format(Locale.ROOT, "%.1f °C", Math.abs(celsius));
  }

  /**
   * What it means for the firing that a probe tells nothing that can be believed.
   *
   * @param until as "Until it is back"
   */
  static String unwatched(Situation situation, String until) {
    return situation
        .meant()
        .followed()
        .map(
            other ->
                "The firing goes by probe "
                    + other
                    + " and is watched as before; only the comparison is missing.")
        .orElse(until + " the kiln is watched by nobody but you: go by cones and colour.");
  }

  /** {@code 40 s}, {@code 12 min}, {@code 2 h 05 min}. */
  static String span(long seconds) {
    if (seconds < 120) {
      return seconds + " s";
    }
    long minutes = seconds / 60;
    return minutes < 120
        ? minutes + " min"
        : String.format(Locale.ROOT, "%d h %02d min", minutes / 60, minutes % 60);
  }
}
