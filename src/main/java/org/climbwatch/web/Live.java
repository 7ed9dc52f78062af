package org.climbwatch.web;

import java.time.Instant;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.climbwatch.watch.Judged;

/** What the live stream carries. */
public sealed interface Live {
  /**
   * A reading as it came.
   *
   * @param elapsedS s since the first reading of the firing; empty outside a firing
   */
  record NewReading(Instant time, OptionalLong firingId, OptionalDouble elapsedS, Judged judged)
      implements Live {}

  /** Something happened, or the potter did something. */
  record Happened(OptionalLong firingId, EventLine line) implements Live {}
}
