package org.climbwatch.source.simulated;

/** What goes wrong in a simulated firing. */
public enum FaultKind {
  NONE("none"),
  /** The bottle chills until the climb is gone. */
  STALL("stall"),
  /** A flame goes out and nobody lights it. */
  BURNER_OUT("burner_out"),
  /** The gas is opened much too far. */
  RUNAWAY("runaway"),
  OPEN_CIRCUIT("open_circuit"),
  SHORT_TO_GROUND("short_to_ground"),
  /** The reading jumps by tens of degrees. */
  PROBE_NOISE("probe_noise"),
  /** An igniter that clicks on and on: wild looks, and some that the amplifier calls open. */
  SPARKS("sparks"),
  /** The amplifier says nothing more. */
  SILENCE("silence"),
  /** The couple's wires are swapped at the amplifier, from the start. */
  REVERSED("reversed");

  private final String word;

  FaultKind(String word) {
    this.word = word;
  }

  /** The word of the command line and the configuration. */
  public String word() {
    return word;
  }

  /** All words, for a message. */
  public static String words() {
    StringBuilder all = new StringBuilder();
    for (FaultKind kind : values()) {
      all.append(all.isEmpty() ? "" : ", ").append(kind.word);
    }
    return all.toString();
  }

  /**
   * The kind of a word.
   *
   * @throws IllegalArgumentException for any other; the message names the allowed ones
   */
  public static FaultKind ofWord(String word) {
    for (FaultKind kind : values()) {
      if (kind.word.equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("unknown fault \"" + word + "\"; allowed: " + words());
  }
}
