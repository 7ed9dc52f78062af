package org.climbwatch.web;

import java.util.List;
import java.util.Locale;
import org.climbwatch.alarm.RuleSettings;

/**
 * A trial of alarm settings on past firings, as far as it has come.
 *
 * @param settings of the rules that were changed, as they are tried
 * @param firings how many it is to go through
 * @param tookS s that it has run
 * @param results of the firings that are done, the newest first
 */
public record TrialSoFar(
    long id,
    State state,
    List<RuleSettings> settings,
    int firings,
    double tookS,
    List<TriedFiring> results) {
  /** Where a trial can stand. */
  public enum State {
    RUNNING,
    DONE,
    /** Somebody ended it. */
    CANCELLED,
    /** It took longer than one may. */
    OUT_OF_TIME,
    /** The record could not be read, or the fault is ours: the log says more. */
    FAILED;

    /** The lower-case word of JSON. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public TrialSoFar {
    settings = List.copyOf(settings);
    results = List.copyOf(results);
  }
}
