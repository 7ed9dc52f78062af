package org.climbwatch.source.scpi;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * One number as an instrument answers it: {@code <NR1>}, {@code <NR2>} or {@code <NR3>} of IEEE
 * 488.2-1992, section 8.7, with the values that SCPI-1999 Volume 1, section 7.2.1, sets aside:
 *
 * <pre>
 *    9.9E37   infinity, which instruments also answer when overloaded
 *   -9.9E37   negative infinity
 *    9.91E37  not a number
 * </pre>
 */
sealed interface NumericAnswer {
  /** A finite number. */
  record Value(double number) implements NumericAnswer {}

  /** Infinity of either sign: beyond the range, or an input left open. */
  record Overload() implements NumericAnswer {}

  /** The instrument has no value. */
  record NotANumber() implements NumericAnswer {}

  /** Not one number. */
  record Unreadable() implements NumericAnswer {}

  double INFINITY = 9.9e37;
  double NOT_A_NUMBER = 9.91e37;

  /** The two differ by one in a thousand; instruments print four digits of them or more. */
  double RELATIVE_TOLERANCE = 2e-4;

  Pattern NUMBER = Pattern.compile("[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([Ee][+-]?[0-9]{1,3})?");

  /** Reads an answer without its line end. */
  static NumericAnswer of(String line) {
    String text = line.strip();
    switch (text.toUpperCase(Locale.ROOT)) {
      case "NAN":
        return new NotANumber();
      case "INF", "+INF", "INFINITY", "NINF", "-INF", "NINFINITY":
        return new Overload();
      default:
        break;
    }
    if (!NUMBER.matcher(text).matches()) {
      return new Unreadable();
    }
    double number = Double.parseDouble(text);
    if (isAbout(number, NOT_A_NUMBER)) {
      return new NotANumber();
    }
    boolean infinite = Double.isInfinite(number) || isAbout(Math.abs(number), INFINITY);
    return infinite ? new Overload() : new Value(number);
  }

  private static boolean isAbout(double number, double special) {
    return Math.abs(number - special) <= RELATIVE_TOLERANCE * special;
  }
}
