package org.climbwatch.web;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.climbwatch.watch.View;

/**
 * What is true now.
 *
 * @param time wall time of this answer
 * @param view what the core knows; its kiln's name among it
 * @param probe the configured name of the probe, known also before its first reading
 * @param sourceLine one line on the device that gives the readings
 * @param latestAgeS s since the newest reading arrived; empty before the first
 * @param staleAfterS s after which a reading no longer counts as the temperature now
 * @param firingId number of the firing that is on
 * @param elapsedS s since the first reading of the firing that is on
 * @param notices what the user must know at every look, for instance that this is a demonstration
 */
public record Status(
    Instant time,
    View view,
    String probe,
    String sourceLine,
    OptionalDouble latestAgeS,
    double staleAfterS,
    OptionalLong firingId,
    OptionalDouble elapsedS,
    List<String> notices) {
  public Status {
    if (!(staleAfterS > 0)) {
      throw new IllegalArgumentException("staleAfterS must be above 0, was " + staleAfterS);
    }
    notices = List.copyOf(notices);
  }

  /** Whether the newest reading is too old to be shown as the temperature now. */
  boolean stale() {
    return latestAgeS.isEmpty() || latestAgeS.getAsDouble() > staleAfterS;
  }
}
