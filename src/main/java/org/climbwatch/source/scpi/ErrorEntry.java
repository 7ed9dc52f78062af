package org.climbwatch.source.scpi;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One entry of an instrument's error queue, as {@code SYSTem:ERRor?} answers it (SCPI-1999 Volume
 * 2, section 21.8): a number, a comma and a quoted text. Number 0 means that the queue is empty.
 */
record ErrorEntry(int number, String text) {
  private static final Pattern ENTRY =
      Pattern.compile("\\s*([+-]?[0-9]{1,5})\\s*,\\s*\"(.*)\"\\s*");

  /** Longer texts are cut; the standard allows 255 characters. */
  private static final int LONGEST = 80;

  static Optional<ErrorEntry> of(String line) {
    Matcher entry = ENTRY.matcher(line);
    return entry.matches()
        ? Optional.of(new ErrorEntry(Integer.parseInt(entry.group(1)), entry.group(2)))
        : Optional.empty();
  }

  boolean isNone() {
    return number == 0;
  }

  @Override
  public String toString() {
    return number + " \"" + (text.length() > LONGEST ? text.substring(0, LONGEST) : text) + '"';
  }
}
