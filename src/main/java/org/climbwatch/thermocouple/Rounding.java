package org.climbwatch.thermocouple;

import java.util.Locale;

/**
 * A value beside its expanded uncertainty with no digit that says nothing.
 *
 * <p>The uncertainty gets two significant digits where the first is 1 to 4 and one otherwise, so
 * that rounding moves it by a few per cent only; where rounding would take more than 5 % off, it is
 * rounded up. The value ends at the same place.
 *
 * @see "JCGM 100:2008 (GUM), 7.2.6"
 */
final class Rounding {
  private static final double MOST_TAKEN_OFF = 0.05;

  /** Digits after the point, at most: the record's own grid. */
  private static final int FINEST = 3;

  private Rounding() {}

  /** "1004 ± 8 °C"; "-12.3 ± 1.6 °C". */
  static String text(double value, double uncertainty) {
    int digits = digits(uncertainty);
    double step = step(digits);
    double rounded = roundedUncertainty(uncertainty, step);
    // 9.7 becomes 10, which has two digits at the same place: "1004 ± 10"
    int shown = Math.max(digits, 0);
    return String.format(
        Locale.ROOT,
        "%." + shown + "f ± %." + shown + "f °C",
        Math.rint(value / step) * step + 0.0,
        rounded);
  }

  /** Digits after the point; negative where tens are the last that count. */
  private static int digits(double uncertainty) {
    if (!(uncertainty > 0)) {
      return FINEST;
    }
    int magnitude = (int) Math.floor(StrictMath.log10(uncertainty));
    double lead = uncertainty / step(-magnitude);
    return Math.min(lead < 5 ? 1 - magnitude : -magnitude, FINEST);
  }

  private static double step(int digits) {
    return digits >= 0 ? 1 / StrictMath.pow(10, digits) : StrictMath.pow(10, -digits);
  }

  private static double roundedUncertainty(double uncertainty, double step) {
    double nearest = Math.rint(uncertainty / step) * step;
    return nearest < uncertainty * (1 - MOST_TAKEN_OFF)
        ? Math.ceil(uncertainty / step) * step
        : nearest;
  }
}
