package org.climbwatch.web;

import java.util.List;
import java.util.OptionalInt;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.RuleChange;

/**
 * Alarm settings to be tried, and on which firings.
 *
 * @param changes of the settings in force, one for each rule at most
 * @param firings their numbers, at most {@link #MOST_FIRINGS}; empty when {@code last} says which
 * @param last that many of the newest
 */
public record TrialOrder(List<RuleChange> changes, List<Long> firings, OptionalInt last) {
  /** In one go: what a season needs is the command line's work. */
  public static final int MOST_FIRINGS = 20;

  public TrialOrder {
    changes = List.copyOf(changes);
    firings = List.copyOf(firings);
    if (firings.isEmpty() == last.isEmpty()) {
      throw new IllegalArgumentException("either firings or how many of the last");
    }
  }

  /** The settings under trial. */
  public AlarmSettings on(AlarmSettings inForce) {
    AlarmSettings tried = inForce;
    for (RuleChange change : changes) {
      tried = tried.with(change.on(tried.of(change.kind().alarm())));
    }
    return tried;
  }
}
