package org.climbwatch.alarm;

import java.time.Duration;

/**
 * For how long the potter puts an alarm aside, and who says so. Never for ever.
 *
 * @param time 1 min to 8 h, in whole seconds
 */
public record Shelving(Duration time, Signature by) {
  public static final Duration SHORTEST = Duration.ofMinutes(1);

  /** A night, or a working day: nobody remembers longer what was put aside. */
  public static final Duration LONGEST = Duration.ofHours(8);

  public Shelving {
    if (time.getNano() != 0 || time.compareTo(SHORTEST) < 0 || time.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException(
          "an alarm is shelved for "
              + SHORTEST.toSeconds()
              + " to "
              + LONGEST.toSeconds()
              + " whole seconds, was "
              + time);
    }
  }

  /** One text from which {@link #ofText} makes an equal value: {@code 1800 s: Ann}. */
  public String text() {
    return time.toSeconds() + " s: " + by.text();
  }

  /**
   * Back again.
   *
   * @throws IllegalArgumentException when the text does not begin with a time that is allowed
   */
  public static Shelving ofText(String text) {
    int end = text.indexOf(" s:");
    if (end < 1 || end > 9) {
      throw new IllegalArgumentException("\"" + text + "\" does not begin with a time as 1800 s:");
    }
    Duration time = Duration.ofSeconds(Long.parseLong(text.substring(0, end).strip()));
    return new Shelving(time, Signature.ofText(text.substring(end + 3)));
  }
}
