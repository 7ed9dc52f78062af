package org.climbwatch.alarm;

/**
 * Something to announce of an alarm.
 *
 * @param state what the occurrence is now; normal when it is closed
 * @param message what to say
 * @param reminder whether it only says again what was announced before
 */
record AlarmChange(Occurrence occurrence, AlarmState state, String message, boolean reminder) {
  /**
   * What a turn has made of an occurrence.
   *
   * @param gone how the rule begins to say that it is over
   */
  static AlarmChange by(Turn turn, Occurrence one, AlarmState state, String gone) {
    boolean wants =
        state == AlarmState.UNACKNOWLEDGED
            || state == AlarmState.ACKNOWLEDGED
            || state == AlarmState.SHELVED;
    return wants
        ? new AlarmChange(one, state, one.message(), false)
        : new AlarmChange(
            one, state.stands() ? state : AlarmState.NORMAL, one.overWords(turn, gone), false);
  }

  /** The change of one for which another alarm speaks now. */
  AlarmChange saidBy(AlarmKind other) {
    String says = "Now said by \"" + other.title() + "\". It was: " + occurrence.message();
    return new AlarmChange(occurrence, state, says, reminder);
  }
}
