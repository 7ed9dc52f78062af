package org.climbwatch.alarm;

/** Where an alarm stands in its life cycle (ANSI/ISA-18.2, IEC 62682). */
public enum AlarmState {
  /** Watched, and the condition does not hold. */
  NORMAL("normal", false),
  /** The condition holds and nobody has answered. */
  UNACKNOWLEDGED("unacknowledged", true),
  /** The condition holds and somebody has answered. */
  ACKNOWLEDGED("acknowledged", true),
  /** The condition has gone before anybody answered. */
  RETURNED_UNACKNOWLEDGED("returned_unacknowledged", true),
  /** Gone and answered, but of a kind that stays until the potter resets it. */
  LATCHED("latched", true),
  /** Put aside by the potter for a limited time. */
  SHELVED("shelved", true),
  /** Its rule does not apply in this phase. */
  SUPPRESSED_BY_DESIGN("suppressed_by_design", false),
  /** Its rule is switched off in the settings. */
  OUT_OF_SERVICE("out_of_service", false);

  private final String word;
  private final boolean stands;

  AlarmState(String word, boolean stands) {
    this.word = word;
    this.stands = stands;
  }

  /** The lower-case word of the contract. */
  public String word() {
    return word;
  }

  /** Whether there is an occurrence that is not closed. */
  public boolean stands() {
    return stands;
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
