package org.climbwatch.alarm;

import org.climbwatch.reading.Fault;

/** What a fault likely means where that is not plain, and what to check first. */
public final class FirstChecks {
  private FirstChecks() {}

  /** A sentence or two. */
  public static String of(Fault fault) {
    return switch (fault) {
      case OPEN_CIRCUIT ->
          "A screw is loose or the couple has broken. First check the screws at the amplifier and"
              + " at the probe's head.";
      case SHORT_TO_GROUND ->
          "A wire touches the kiln's metal or the ground of the box; a very hot sheath or tube"
              + " conducts, too. First check the lead where it passes the kiln's shell, then the"
              + " probe's head, then whether the amplifier's board ties − to ground.";
      case SHORT_TO_SUPPLY ->
          "A wire touches a terminal or pin that carries the amplifier's supply, or the terminals"
              + " are wet. First switch the box off, then check its terminals for loose strands and"
              + " damp; if it comes back with the probe unscrewed and + and − bridged, the"
              + " amplifier is broken.";
      case OUT_OF_RANGE ->
          "The leads may be reversed, or the type set wrongly. First check + and − at the"
              + " amplifier.";
      case BELOW_RANGE ->
          "A Type B couple gives next to nothing below 42 °C, and a MAX31856 that linearises shows"
              + " it from 250 °C on. Nothing is wrong by that alone: it comes as the kiln warms.";
      case WIRING -> "First check the amplifier's supply, then its data wires and chip select.";
      case NO_VALUE ->
          "First check what the device itself reports, such as a register that it does not have.";
      case GARBLED -> "First check the speed set for the port, and that nothing else uses it.";
      case NO_ANSWER, DEVICE_GONE -> "First check plug and supply of the amplifier.";
    };
  }
}
