package org.climbwatch.thermocouple;

import java.util.Locale;

/** A temperature or an emf that the thermocouple's published function does not cover. */
public final class OutOfRange extends IllegalArgumentException {
  private static final long serialVersionUID = 1;

  private OutOfRange(String message) {
    super(message);
  }

  static OutOfRange temperature(
      ThermocoupleType type, double temperatureC, double lowestC, double highestC) {
    return new OutOfRange(message(type, temperatureC, lowestC, highestC, "°C"));
  }

  static OutOfRange emf(ThermocoupleType type, double emfMv, double lowestMv, double highestMv) {
    String message = message(type, emfMv, lowestMv, highestMv, "mV");
    boolean ambiguous = type == ThermocoupleType.B && emfMv < lowestMv;
    return new OutOfRange(
        ambiguous
            ? message.concat("; below 42 °C one emf of Type B means two temperatures")
            : message);
  }

  private static String message(
      ThermocoupleType type, double value, double lowest, double highest, String unit) {
    return String.format(
        Locale.ROOT,
        "%s %s is outside Type %s: allowed %.3f to %.3f %s",
        value,
        unit,
        type,
        lowest,
        highest,
        unit);
  }
}
