package org.climbwatch.alarm;

import java.time.Duration;
import org.climbwatch.reading.Moment;

/**
 * When an alarm was last announced, and how often it has been said again. The pauses double up to
 * eight times the first, so that a week without anybody does not fill the record.
 *
 * @param waitsSince when it was raised last, or came off the shelf
 * @param saidAt the last time
 * @param times how often again since it was raised
 */
record Reminder(Moment waitsSince, Moment saidAt, int times) {
  private static final int MOST_DOUBLINGS = 3;

  /** Whether it is time to say it again. At once in a new boot: nobody may have seen it. */
  boolean isDue(Moment at, Duration first) {
    long pauseMillis = first.toMillis() << Math.min(times, MOST_DOUBLINGS);
    return !at.sameBoot(saidAt) || at.millisSince(saidAt) >= pauseMillis;
  }

  /** It has just been announced. */
  static Reminder from(Moment at) {
    return new Reminder(at, at, 0);
  }

  /** " after 5 min", or nothing where that is not known since a restart. */
  String waited(Moment at) {
    return waitsSince.sameBoot(at) && saidAt.sameBoot(at)
        ? " after " + Words.span(at.millisSince(waitsSince) / 1000)
        : "";
  }

  Reminder again(Moment at) {
    return new Reminder(waitsSince, at, times + 1);
  }
}
