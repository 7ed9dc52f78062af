package org.climbwatch.alarm;

/**
 * What an alarm is about. The word is what JSON, CSV, the journal and the configuration carry.
 *
 * <p>What it likely means and what to check first are the trade's common practice.
 */
public enum AlarmKind {
  OVER_TEMPERATURE("over_temperature", "Too hot", Priority.HIGH),
  CLIMB_TOO_FAST("climb_too_fast", "Climbing too fast", Priority.MEDIUM),
  CLIMB_STALLED("climb_stalled", "Climb has stalled", Priority.MEDIUM),
  STALL_AHEAD("stall_ahead", "Climb will stall", Priority.MEDIUM),
  SAGGING("sagging", "Sinking slowly", Priority.MEDIUM),
  FALLING("falling", "Falling: the flame may be out", Priority.HIGH),
  PROBE_FAULT("probe_fault", "Probe fault", Priority.HIGH),
  READINGS_STOPPED("readings_stopped", "Readings have stopped", Priority.HIGH),
  READINGS_LATE("readings_late", "Readings were late", Priority.MEDIUM),
  STORAGE_TROUBLE("storage_trouble", "Record cannot be written", Priority.MEDIUM),
  STORAGE_LOW("storage_low", "Little room left for the record", Priority.LOW),
  CLOCK_UNTRUSTED("clock_untrusted", "Clock cannot be trusted", Priority.LOW),
  PROBES_APART("probes_apart", "Probes are far apart", Priority.MEDIUM),
  PROBE_TOO_HOT("probe_too_hot", "Too hot for the probe", Priority.MEDIUM),
  TARGET_REACHED("target_reached", "Target reached", Priority.MEDIUM),
  HOLD_OVER("hold_over", "Hold is over", Priority.MEDIUM),
  BEHIND_PLAN("behind_plan", "Behind the plan", Priority.LOW),
  AHEAD_OF_PLAN("ahead_of_plan", "Ahead of the plan", Priority.LOW),
  COOLING_TOO_FAST("cooling_too_fast", "Cooling too fast", Priority.MEDIUM),
  SAFE_TO_OPEN("safe_to_open", "Cool enough to open", Priority.LOW),
  PROBE_REVERSED("probe_reversed", "Probe wires look swapped", Priority.MEDIUM),
  PROBE_STUCK("probe_stuck", "Probe signal stands still", Priority.MEDIUM),
  PROBE_NOISY("probe_noisy", "Probe signal is noisy", Priority.MEDIUM),
  LOOKS_SCATTER("looks_scatter", "Looks within a reading scatter", Priority.LOW),
  PROBE_JUMPS("probe_jumps", "Probe signal jumps", Priority.MEDIUM),
  PROBE_LEAPT("probe_leapt", "Probe signal has left the kiln", Priority.HIGH),
  COLD_KILN_DISAGREES("cold_kiln_disagrees", "Cold kiln reads wrong", Priority.LOW),
  COLD_JUNCTION_HOT("cold_junction_hot", "Amplifier too hot", Priority.MEDIUM),
  COLD_JUNCTION_UNSTEADY(
      "cold_junction_unsteady", "Amplifier's temperature moves fast", Priority.LOW);

  private final String word;
  private final String title;
  private final Priority priority;

  AlarmKind(String word, String title, Priority priority) {
    this.word = word;
    this.title = title;
    this.priority = priority;
  }

  /** The lower-case word of the contract. */
  public String word() {
    return word;
  }

  /** A few words for a heading. */
  public String title() {
    return title;
  }

  /** How much it hurries. */
  public Priority priority() {
    return priority;
  }

  /**
   * The same, but not high for a probe that is only compared: nobody is in danger by its silence.
   *
   * @param followed whether the firing goes by the probe
   */
  public Priority priority(boolean followed) {
    return priority == Priority.HIGH && !followed ? Priority.MEDIUM : priority;
  }

  /**
   * Whether it stays until the potter resets it. Only the lost flame does: a kiln that climbs again
   * by itself proves neither that every burner burns nor that no gas has gathered, somebody has to
   * have looked.
   */
  public boolean latching() {
    return this == FALLING;
  }

  /** Whether no single reading is to be trusted while it stands, and no climb of them. */
  boolean badSignal() {
    return this == PROBE_NOISY || this == PROBE_STUCK || this == PROBE_REVERSED;
  }

  /** The kind of a word of the contract. */
  public static AlarmKind ofWord(String word) {
    for (AlarmKind kind : values()) {
      if (kind.word.equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("unknown alarm kind \"" + word + "\"");
  }
}
