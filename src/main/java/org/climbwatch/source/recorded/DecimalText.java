package org.climbwatch.source.recorded;

/** Numbers as they stand in a CSV: sign, digits, '.', digits, and an exponent if need be. */
final class DecimalText {
  /** Up to here digits and power of ten are exact, so one division rounds correctly. */
  private static final int EXACT_DIGITS = 15;

  private static final double[] POWERS_OF_TEN = new double[EXACT_DIGITS + 1];

  static {
    POWERS_OF_TEN[0] = 1;
    for (int i = 1; i <= EXACT_DIGITS; i++) {
      POWERS_OF_TEN[i] = 10 * POWERS_OF_TEN[i - 1];
    }
  }

  private DecimalText() {}

  /** The number, spaces round it passed over; NaN when it is none. */
  static double number(char[] text, int from, int to) {
    int first = from;
    int end = to;
    while (first < end && text[first] == ' ') {
      first++;
    }
    while (end > first && text[end - 1] == ' ') {
      end--;
    }
    boolean minus = first < end && text[first] == '-';
    long digits = 0;
    int count = 0;
    int places = -1;
    for (int i = minus ? first + 1 : first; i < end; i++) {
      char c = text[i];
      if (c >= '0' && c <= '9' && count < EXACT_DIGITS) {
        digits = 10 * digits + (c - '0');
        count++;
        places += places >= 0 ? 1 : 0;
      } else if (c == '.' && places < 0) {
        places = 0;
      } else {
        return longWay(new String(text, first, end - first));
      }
    }
    if (count == 0) {
      return Double.NaN;
    }
    double size = digits / POWERS_OF_TEN[Math.max(places, 0)];
    return minus ? -size : size;
  }

  /** Many digits, an exponent or a plus sign; not the other things that Java takes for a number. */
  private static double longWay(String text) {
    for (int i = 0; i < text.length(); i++) {
      if ("0123456789.+-eE".indexOf(text.charAt(i)) < 0) {
        return Double.NaN;
      }
    }
    try {
      double value = Double.parseDouble(text);
      return Double.isFinite(value) ? value : Double.NaN;
    } catch (NumberFormatException notANumber) {
      return Double.NaN;
    }
  }
}
