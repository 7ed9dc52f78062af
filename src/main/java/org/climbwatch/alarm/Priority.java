package org.climbwatch.alarm;

/** How much an alarm hurries. Three, so that each is meant. */
public enum Priority {
  /** Somebody or the ware is in danger: go to the kiln now. */
  HIGH("high"),
  /** The firing suffers unless something is done within minutes. */
  MEDIUM("medium"),
  /** Worth knowing at the next look. */
  LOW("low");

  private final String word;

  Priority(String word) {
    this.word = word;
  }

  /** The lower-case word of the contract. */
  public String word() {
    return word;
  }
}
