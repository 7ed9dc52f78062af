package org.climbwatch.web;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.AlarmSettings;

/**
 * Trying alarm settings on past firings: one trial at a time, and the newest are kept, the last
 * that is over in any case. Nothing of it changes a setting or a record. Called from several
 * threads at once.
 */
public interface Trials {
  /** The settings that the kiln is watched with. */
  AlarmSettings inForce();

  /**
   * Begins a trial and returns at once.
   *
   * @throws Refused 409 while another runs or a firing is not over, 404 for a firing that is not
   *     there
   */
  TrialSoFar begin(TrialOrder order);

  /** The trials that are kept, the newest first; no other than the first can be running. */
  List<TrialSoFar> kept();

  /** A trial, or empty when there is none of that number any more. */
  Optional<TrialSoFar> one(long id);

  /** Ends a trial before its time; one that is over stays as it is. */
  void cancel(long id);

  /** Writes what differs as {@code replay --firings} does, and leaves the stream open. */
  void csv(long id, OutputStream out) throws IOException;
}
