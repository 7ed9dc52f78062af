package org.climbwatch.alarm;

import java.time.Duration;
import org.climbwatch.reading.Moment;

/**
 * When an alarm was last announced, and how often it has been said again. The pauses double up to
 * eight times the first, so that a week without anybody does not fill the record.
 *
 * @param saidAt the last time
 * @param times how often again since it was raised
 */
record Reminder(Moment saidAt, int times) {
  private static final int MOST_DOUBLINGS = 3;

  /** Whether it is time to say it again. At once in a new boot: nobody may have seen it. */
  boolean isDue(Moment at, Duration first) {
    long pauseMillis = first.toMillis() << Math.min(times, MOST_DOUBLINGS);
    return !at.sameBoot(saidAt) || at.millisSince(saidAt) >= pauseMillis;
  }

  Reminder again(Moment at) {
    return new Reminder(at, times + 1);
  }
}
