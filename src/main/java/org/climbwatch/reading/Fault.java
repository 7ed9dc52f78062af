package org.climbwatch.reading;

/** Why a look at a probe gave no temperature. The word is what JSON, CSV and the journal carry. */
public enum Fault {
  /** The thermocouple circuit is broken: wire, junction or a loose screw. */
  OPEN_CIRCUIT("open_circuit", "the thermocouple circuit is open"),
  SHORT_TO_GROUND("short_to_ground", "the thermocouple is shorted to ground"),
  SHORT_TO_SUPPLY("short_to_supply", "the thermocouple is shorted to the supply"),
  /** The signal lies outside the thermocouple's published range or the amplifier's. */
  OUT_OF_RANGE("out_of_range", "the signal is outside what the thermocouple can give"),
  /** Colder than the couple can tell: Type B, whose voltage below 42 °C means two temperatures. */
  BELOW_RANGE("below_range", "it is colder than this couple can tell"),
  /** A frame that no working amplifier sends: all zeros, all ones, reserved bits set. */
  WIRING("wiring", "the amplifier's frames are impossible: a wiring fault"),
  /** Bytes arrive but nothing readable: wrong speed, noise, another device. */
  GARBLED("garbled", "what arrives cannot be read"),
  /** The device answers, but that it has no value: an error code, or not-a-number. */
  NO_VALUE("no_value", "the device answers that it has no value"),
  /** The device is there but says nothing. */
  NO_ANSWER("no_answer", "no reading arrives"),
  /** The port or bus device is not there. */
  DEVICE_GONE("device_gone", "the device is gone");

  private final String word;
  private final String plainly;

  Fault(String word, String plainly) {
    this.word = word;
    this.plainly = plainly;
  }

  /** The lower-case word of the contract, for instance {@code open_circuit}. */
  public String word() {
    return word;
  }

  /** A half sentence for people, without a capital or a full stop. */
  public String plainly() {
    return plainly;
  }

  /** Whether readings do not arrive at all, as against arriving broken. */
  public boolean silence() {
    return this == NO_ANSWER || this == DEVICE_GONE;
  }

  /** Whether something is wrong, as against a couple that is only too cold to tell. */
  public boolean wrong() {
    return this != BELOW_RANGE;
  }

  /**
   * The fault of a word of the contract.
   *
   * @throws IllegalArgumentException for any other word; the message names the allowed ones
   */
  public static Fault ofWord(String word) {
    for (Fault fault : values()) {
      if (fault.word.equals(word)) {
        return fault;
      }
    }
    StringBuilder allowed = new StringBuilder();
    for (Fault fault : values()) {
      allowed.append(allowed.isEmpty() ? "" : ", ").append(fault.word);
    }
    throw new IllegalArgumentException(
        "unknown quality \"" + word + "\"; allowed: good, " + allowed);
  }
}
