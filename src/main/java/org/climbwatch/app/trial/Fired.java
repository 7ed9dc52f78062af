package org.climbwatch.app.trial;

/**
 * An alarm that was raised in a firing.
 *
 * @param alarm the kind's word, with a dash and the probe's name where it is not the followed one
 * @param elapsedMs ms since the firing's first reading
 * @param overMs when what raised it was gone, in the same ms; {@link Long#MAX_VALUE} when it was
 *     not within the firing
 * @param message what was said
 */
public record Fired(String alarm, long elapsedMs, long overMs, String message) {
  /** One that was over at once. */
  Fired(String alarm, long elapsedMs, String message) {
    this(alarm, elapsedMs, elapsedMs, message);
  }

  /** The same, over at another time. */
  Fired over(long atMs) {
    return new Fired(alarm, elapsedMs, atMs, message);
  }

  /** Whether it stood at a time. */
  boolean stoodAt(long atMs) {
    return atMs >= elapsedMs && atMs < overMs;
  }

  /** What an occurrence's id says of alarm and probe: kind, boot, ms, and the probe if need be. */
  static String alarmOf(String occurrence) {
    String[] parts = occurrence.split("-", 4);
    return parts.length < 4 ? parts[0] : parts[0] + "-" + parts[3];
  }
}
