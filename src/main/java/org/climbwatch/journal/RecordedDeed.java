package org.climbwatch.journal;

import java.time.Instant;

/**
 * Something that the potter or the program did.
 *
 * @param at wall time
 * @param elapsedMs ms since the firing's first reading
 * @param action {@code began}, {@code ended}, {@code declared}, {@code noted}, {@code
 *     acknowledged}, {@code shelved}, {@code unshelved}, {@code reset}, {@code resumed} (the
 *     program started again), {@code reported} (what it found about its machine), {@code
 *     configured} (other settings), or {@code remarked} (a note on a firing that was over)
 * @param subject the firing's name, the declared phase's word, the alarm's id or the reported
 *     matter; else empty
 * @param text the note; of an alarm's deed {@link org.climbwatch.alarm.Signature#text} or {@link
 *     org.climbwatch.alarm.Shelving#text}; how long the machine was off, or {@link #SAME_BOOT};
 *     {@link org.climbwatch.alarm.Report#text}; or the settings in the codec's text; else empty
 */
public record RecordedDeed(Instant at, long elapsedMs, String action, String subject, String text) {
  /** The text of a start of the program while the machine stayed on. */
  public static final String SAME_BOOT = "same boot";
}
