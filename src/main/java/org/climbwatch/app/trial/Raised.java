package org.climbwatch.app.trial;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.climbwatch.alarm.AlarmState;

/** Gathers from announcements, in their order, what was raised and for how long it stood. */
final class Raised {
  private static final List<String> OVER =
      List.of(
          AlarmState.NORMAL.word(),
          AlarmState.RETURNED_UNACKNOWLEDGED.word(),
          AlarmState.LATCHED.word());

  private final Map<String, Fired> byOccurrence = new LinkedHashMap<>();

  /**
   * An alarm's change of state.
   *
   * @param occurrence its id
   * @param state the word of the state that it is in now
   */
  void changed(String occurrence, String state, long elapsedMs, String message) {
    if (state.equals(AlarmState.UNACKNOWLEDGED.word())) {
      String alarm = Fired.alarmOf(occurrence);
      byOccurrence.putIfAbsent(occurrence, new Fired(alarm, elapsedMs, message));
      byOccurrence.computeIfPresent(occurrence, (id, fired) -> fired.over(Long.MAX_VALUE));
    } else if (OVER.contains(state)) {
      byOccurrence.computeIfPresent(occurrence, (id, fired) -> ended(fired, elapsedMs));
    }
  }

  /** What was raised, each occurrence once, in the order of time. */
  List<Fired> all() {
    return List.copyOf(byOccurrence.values());
  }

  /** An answer to what has gone already changes nothing of when it went. */
  private static Fired ended(Fired fired, long elapsedMs) {
    return fired.overMs() == Long.MAX_VALUE ? fired.over(elapsedMs) : fired;
  }
}
