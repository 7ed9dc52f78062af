package org.climbwatch.app;

import java.util.Locale;
import java.util.Optional;
import org.climbwatch.journal.ProbeDrift;
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

  /**
   * °C: top and bottom of a kiln differ by some tens of degrees, but by much the same from one
   * firing to the next. No figure is published; ours.
   */
  private static final double DRIFTED_C = 25;

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

  /** What is to be said of two probes that have drifted apart over the firings, if anything. */
  static Optional<String> drift(ProbeDrift drift) {
    if (Math.abs(drift.changeC()) < DRIFTED_C) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "In its first %d firings it read %s probe %s, in the last %d %s (means above 800 °C):"
                + " one of the two has drifted, was moved, or the kiln is fired in another way."
                + " Check first where both tips are; then compare with witness cones beside each,"
                + " and replace the one that does not agree. A couple that rots reads low.",
            drift.firings(),
            beside(drift.earlierC()),
            drift.beside(),
            drift.firings(),
            beside(drift.latelyC())));
  }

  private static String beside(double aboveC) {
    return String.format(
        Locale.ROOT, "%.0f °C %s", Math.abs(aboveC), aboveC >= 0 ? "above" : "below");
  }

  private static boolean noble(ThermocoupleType type) {
    return switch (type) {
      case B, R, S -> true;
      case E, J, K, N, T -> false;
    };
  }
}
