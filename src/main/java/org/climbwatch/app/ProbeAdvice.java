package org.climbwatch.app;

import org.climbwatch.journal.ProbeWear;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * What its firings say about when to replace a probe.
 *
 * <p>No published figure bounds the drift of couples in kilns, and tolerance classes hold for new
 * wire only. That base-metal couples are replaced after 50 to 100 firings to 1000 °C and above is
 * common practice.
 */
final class ProbeAdvice {
  private static final int SOON = 50;
  private static final int NOW = 100;

  private ProbeAdvice() {}

  /** How much it hurries: {@code fine}, {@code soon} or {@code now}. */
  static String word(ThermocoupleType type, ProbeWear wear) {
    if (noble(type) || wear.highFirings() < SOON) {
      return "fine";
    }
    return wear.highFirings() < NOW ? "soon" : "now";
  }

  /** A sentence or two. */
  static String text(ThermocoupleType type, ProbeWear wear) {
    if (noble(type)) {
      return "No number of firings is known after which Type "
          + type
          + " is used up. Compare with witness cones; replace it when it reads low or its tube has"
          + " cracked.";
    }
    return switch (word(type, wear)) {
      case "now" ->
          "Replace it: couples of this type are used up after 50 to 100 firings to 1000 °C and"
              + " above (common practice). An old one reads low, so the kiln gets hotter than the"
              + " number says.";
      case "soon" ->
          "Have a new one ready: couples of this type are used up after 50 to 100 firings to 1000"
              + " °C and above (common practice). Compare with witness cones at each firing; when"
              + " they fall at a lower number than they used to, replace it.";
      default -> "Go on with it, and compare with witness cones at each firing.";
    };
  }

  private static boolean noble(ThermocoupleType type) {
    return switch (type) {
      case B, R, S -> true;
      case E, J, K, N, T -> false;
    };
  }
}
