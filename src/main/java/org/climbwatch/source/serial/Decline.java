package org.climbwatch.source.serial;

import java.util.Locale;

/** Why a line was not taken. Each reason is counted, and shown by its word. */
enum Decline {
  /** More bytes than a line may have before its end came. */
  TOO_LONG,
  /** A byte outside the printable ASCII characters, 20 to 7E hex. */
  NOT_ASCII,
  /** Not closed by a space, a star, the length, a colon and two capital hex digits. */
  UNCHECKED,
  /** The length named is not the length that arrived: bytes were lost or two lines ran together. */
  LENGTH,
  /** The check named is not that of what arrived: bytes were changed on the way. */
  CHECKSUM,
  /** Not fields of {@code key=value} parted by single spaces, or a number of another form. */
  SYNTAX,
  /** A key or a fault's name that the format does not have. */
  UNKNOWN_KEY,
  /** The same key twice. */
  REPEATED_KEY,
  /** A number that no thermocouple amplifier gives. */
  OUT_OF_RANGE,
  /** An emf without its cold junction, or nothing that could become a reading. */
  INCOMPLETE,
  /** Two things that exclude each other: emf and temperature, or a fault and either. */
  CONTRADICTORY;

  /** The lower-case word for people, for instance {@code too_long}. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
