package org.climbwatch.alarm;

/** Where an alarm stands in its life cycle (ANSI/ISA-18.2, IEC 62682). */
public enum AlarmState {
  /** The condition is gone and the occurrence is closed. */
  NORMAL("normal"),
  /** The condition holds and nobody has answered. */
  UNACKNOWLEDGED("unacknowledged"),
  /** The condition holds and somebody has answered. */
  ACKNOWLEDGED("acknowledged"),
  /** The condition has gone before anybody answered. */
  RETURNED_UNACKNOWLEDGED("returned_unacknowledged");

  private final String word;

  AlarmState(String word) {
    this.word = word;
  }

  /** The lower-case word of the contract. */
  public String word() {
    return word;
  }

  /** The state of a word of the contract. */
  public static AlarmState ofWord(String word) {
    for (AlarmState state : values()) {
      if (state.word.equals(word)) {
        return state;
      }
    }
    throw new IllegalArgumentException("unknown alarm state \"" + word + "\"");
  }
}
