package org.climbwatch.journal;

import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;

/**
 * The numbers that stand for words in the reading table. They are part of the file format: a number
 * once given is never changed nor used again.
 */
final class Codes {
  /** Stands for "none" where a number is handed on that the row does not have. */
  static final int NONE = Integer.MIN_VALUE;

  static final int KIND_EMF = 0;
  static final int KIND_LINEARISED = 1;
  static final int KIND_FAULTY = 2;

  /** Of a row without a fault; in the table that is NULL. */
  static final int GOOD = 0;

  private static final Fault[] FAULTS = new Fault[32];
  private static final Phase[] PHASES = new Phase[8];

  static {
    for (Fault fault : Fault.values()) {
      FAULTS[of(fault)] = fault;
    }
    for (Phase phase : Phase.values()) {
      PHASES[of(phase)] = phase;
    }
  }

  private Codes() {}

  static int of(Fault fault) {
    return switch (fault) {
      case OPEN_CIRCUIT -> 1;
      case SHORT_TO_GROUND -> 2;
      case SHORT_TO_SUPPLY -> 3;
      case OUT_OF_RANGE -> 4;
      case WIRING -> 5;
      case GARBLED -> 6;
      case NO_ANSWER -> 7;
      case DEVICE_GONE -> 8;
      case NO_VALUE -> 20;
      case BELOW_RANGE -> 21;
    };
  }

  static int of(Phase phase) {
    return switch (phase) {
      case IDLE -> 0;
      case DRYING -> 1;
      case CLIMBING -> 2;
      case HOLDING -> 3;
      case COOLING -> 4;
    };
  }

  static Fault fault(int code) {
    return FAULTS[code];
  }

  static Phase phase(int code) {
    return PHASES[code];
  }

  /** {@code good}, or the fault's word. */
  static String quality(int faultCode) {
    return faultCode == GOOD ? "good" : FAULTS[faultCode].word();
  }
}
