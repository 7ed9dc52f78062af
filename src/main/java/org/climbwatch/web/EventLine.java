package org.climbwatch.web;

import java.time.Instant;
import java.util.OptionalDouble;

/**
 * One line of a firing's history.
 *
 * @param elapsedS s since the firing's first reading; empty outside a firing
 * @param kind {@code firing}, {@code phase}, {@code alarm}, {@code reminder}, {@code note}, {@code
 *     acknowledged}, {@code shelved}, {@code unshelved} or {@code reset}
 * @param subject what it is about, as {@link org.climbwatch.watch.Event#subject}; an alarm's id for
 *     what the potter did about it; empty for a note
 * @param state what it is now, as {@link org.climbwatch.watch.Event#state}; empty for the rest
 * @param text a sentence for people, or the note itself
 */
public record EventLine(
    Instant time, OptionalDouble elapsedS, String kind, String subject, String state, String text) {
  /** An alarm that changed its state; the subject is the word of its kind. */
  public static final String ALARM = "alarm";

  /** An unanswered alarm that is said again; the subject is the word of its kind. */
  public static final String REMINDER = "reminder";

  /** A note of the potter. */
  public static final String NOTE = "note";

  /** The potter's answer to an alarm. */
  public static final String ACKNOWLEDGED = "acknowledged";

  /**
   * What the potter did about an alarm.
   *
   * @param kind of the line
   * @param alarmId the line's subject
   * @param text of the line
   */
  public record Said(String kind, String alarmId, String text) {
    /** The whole line. */
    public EventLine at(Instant time, OptionalDouble elapsedS) {
      return new EventLine(time, elapsedS, kind, alarmId, "", text);
    }
  }
}
