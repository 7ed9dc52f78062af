package org.climbwatch.app.trial;

/**
 * An alarm that was raised in a firing.
 *
 * @param alarm the kind's word, with a dash and the probe's name where it is not the followed one
 * @param elapsedMs ms since the firing's first reading
 * @param message what was said
 */
public record Fired(String alarm, long elapsedMs, String message) {
  /** What an occurrence's id says of alarm and probe: kind, boot, ms, and the probe if need be. */
  static String alarmOf(String occurrence) {
    String[] parts = occurrence.split("-", 4);
    return parts.length < 4 ? parts[0] : parts[0] + "-" + parts[3];
  }
}
