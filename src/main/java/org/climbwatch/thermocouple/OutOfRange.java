package org.climbwatch.thermocouple;

import java.util.Locale;

/** A temperature or an emf that the thermocouple's published function does not cover. */
public final class OutOfRange extends IllegalArgumentException {
  private static final long serialVersionUID = 1;

  OutOfRange(ThermocoupleType type, double value, String unit, double lowest, double highest) {
    super(
        String.format(
            Locale.ROOT,
            "%s %s is outside Type %s: allowed %.3f to %.3f %s%s",
            value,
            unit,
            type,
            lowest,
            highest,
            unit,
            type == ThermocoupleType.B && unit.equals("mV")
                ? " (Type B has no single temperature below 42 °C)"
                : ""));
  }
}
