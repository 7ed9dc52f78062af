package org.climbwatch.thermocouple;

/** The letter-designated thermocouples of NIST Monograph 175. */
public enum ThermocoupleType {
  B,
  E,
  J,
  K,
  N,
  R,
  S,
  T
}
