package org.climbwatch.thermocouple;

import java.util.Locale;

/** A temperature or an emf that the thermocouple's published function does not cover. */
public final class OutOfRange extends IllegalArgumentException {
  private static final long serialVersionUID = 1;

  /** mV below 0 that are a cold couple of Type B with noise, rather than reversed wires. */
  private static final double COLD_B_MV = 0.01;

  private final boolean tooColdToTell;

  private OutOfRange(String message, boolean tooColdToTell) {
    super(message);
    this.tooColdToTell = tooColdToTell;
  }

  /** Whether the couple is only too cold: Type B below 42 °C. */
  public boolean tooColdToTell() {
    return tooColdToTell;
  }

  static OutOfRange temperature(
      ThermocoupleType type, double temperatureC, double lowestC, double highestC) {
    return new OutOfRange(message(type, temperatureC, lowestC, highestC, "°C"), false);
  }

  static OutOfRange emf(ThermocoupleType type, double emfMv, double lowestMv, double highestMv) {
    String message = message(type, emfMv, lowestMv, highestMv, "mV");
    boolean ambiguous = type == ThermocoupleType.B && emfMv < lowestMv;
    return new OutOfRange(
        ambiguous
            ? message.concat("; below 42 °C one emf of Type B means two temperatures")
            : message,
        ambiguous && emfMv >= -COLD_B_MV);
  }

  private static String message(
      ThermocoupleType type, double value, double lowest, double highest, String unit) {
    return String.format(
        Locale.ROOT,
        "%s %s is outside Type %s: allowed %s to %.3f %s",
        value,
        unit,
        type,
        // the first emf of Type B that means one temperature is less than a printed digit
        lowest > 0 && lowest < 0.001 ? "more than 0" : String.format(Locale.ROOT, "%.3f", lowest),
        highest,
        unit);
  }
}
