package org.climbwatch.firing;

/** Where a firing stands. The word is what JSON, CSV and the journal carry. */
public enum Phase {
  /** No firing is on. */
  IDLE("idle", "No firing"),
  /** From lighting until pore water has left. */
  DRYING("drying", "Drying"),
  /** The kiln is meant to climb. */
  CLIMBING("climbing", "Climbing"),
  /** The potter holds the temperature on purpose. */
  HOLDING("holding", "Holding"),
  /** The gas is off and the kiln comes down. */
  COOLING("cooling", "Cooling");

  private final String word;
  private final String title;

  Phase(String word, String title) {
    this.word = word;
    this.title = title;
  }

  /** The lower-case word of the contract. */
  public String word() {
    return word;
  }

  /** How a page or a message names it. */
  public String title() {
    return title;
  }

  /**
   * The phase of a word of the contract.
   *
   * @throws IllegalArgumentException for any other word; the message names the allowed ones
   */
  public static Phase ofWord(String word) {
    for (Phase phase : values()) {
      if (phase.word.equals(word)) {
        return phase;
      }
    }
    throw new IllegalArgumentException(
        "unknown phase \"" + word + "\"; allowed: idle, drying, climbing, holding, cooling");
  }
}
