package org.climbwatch.web;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * One line of a firing's history.
 *
 * @param elapsedS s since the firing's first reading; empty outside a firing
 * @param kind {@code firing}, {@code phase}, {@code alarm}, {@code note} or {@code acknowledged}
 * @param subject what it is about, as {@link org.climbwatch.watch.Event#subject}; an alarm's number
 *     for {@code acknowledged}; empty for a note
 * @param state what it is now, as {@link org.climbwatch.watch.Event#state}; empty for the rest
 * @param text a sentence for people, or the note itself
 */
public record EventLine(
    Instant time, OptionalDouble elapsedS, String kind, String subject, String state, String text) {
  /** An alarm that changed its state; the subject is the word of its kind. */
  public static final String ALARM = "alarm";

  /** A note of the potter. */
  public static final String NOTE = "note";

  /** The potter's answer to an alarm. */
  public static final String ACKNOWLEDGED = "acknowledged";
}
