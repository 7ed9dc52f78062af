package org.climbwatch.app;

import java.util.OptionalLong;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;

/**
 * Hears of what is in the journal, or waits for a disk in trouble. Returns at once and throws
 * nothing.
 */
interface EngineListener {
  /**
   * A reading was taken.
   *
   * @param firingId the firing that is on, or that it has just ended
   */
  void measured(Outcome outcome, OptionalLong firingId);

  /** The potter or the program did something. */
  void deed(Input input, Outcome outcome, OptionalLong firingId);
}
