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
  REVERSED("reversed"),
  /**
   * The lead's wires are swapped at both ends, from the start; the box is warmed by what is in it.
   */
  REVERSED_TWICE("reversed_twice"),
  SHORT_TO_SUPPLY("short_to_supply"),
  /** The amplifier sends its last frame again and again. */
  STUCK("stuck"),
  /** A loose screw: the signal steps away and back. */
  JUMPS("jumps"),
  /** The box is too near the kiln. */
  HOT_BOX("hot_box"),
  /** Sun and draught on the box in turn. */
  BOX_DRAUGHT("box_draught"),
  /** The couple rots and reads lower and lower. */
  DRIFT("drift"),
  /** A mains cable along the lead: a wave within each reading, if that has several looks. */
  HUM("hum");

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
