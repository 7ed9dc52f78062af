package org.climbwatch.alarm;

import java.time.Duration;
import org.climbwatch.reading.Moment;

/**
 * The limited time for which an alarm is put aside.
 *
 * @param until when it ends
 * @param ofSeen whether it stood when it was put aside, so that somebody had seen its cause
 */
record Shelf(Moment until, boolean ofSeen) {
  /** Whether the time is over. What a boot cannot count any more is over, too. */
  boolean isOver(Moment at) {
    return !at.sameBoot(until) || at.compareTo(until) >= 0;
  }

  /**
   * The same end as the next boot counts it: what was left, less the time away.
   *
   * @param last the last moment of the boot before
   * @param at the first of this boot
   */
  Shelf carriedOver(Moment last, Moment at, Duration away) {
    if (until.sameBoot(at)) {
      return this;
    }
    long leftMillis = until.sameBoot(last) ? until.millisSince(last) - away.toMillis() : 0;
    return new Shelf(at.plusMillis(Math.max(0, leftMillis)), ofSeen);
  }
}
