package org.climbwatch.thermocouple;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Where each value of a budget comes from, and what the sum does not say, in words. */
final class BudgetWords {
  private BudgetWords() {}

  static String from(UncertaintySource source, MeasuringChain chain, double readC, int samples) {
    ProbeErrors errors = chain.errors();
    String open = open(chain.correction().shareUnknown(readC));
    return switch (source) {
      case WIRE -> wire(chain, readC).concat(open);
      case AMPLIFIER -> stated(errors.amplifierC(), "limit of error of the amplifier" + open);
      case OFFSET ->
          stated(errors.offsetUv(), "limit of the offset, through the couple's slope" + open);
      case GAIN -> stated(errors.gainPpm(), "limit of the gain, on the measured voltage" + open);
      case COLD_JUNCTION ->
          stated(
              errors.coldJunctionC(), "limit of error of its sensor, through the ratio of slopes");
      case STEP -> stated(errors.stepC(), "half of the instrument's step");
      case VOLTAGE_STEP ->
          stated(errors.stepUv(), "half of the converter's step, through the couple's slope");
      case NOISE ->
          samples == 1
              ? "a single look shows no spread"
              : "standard deviation of " + samples + " looks";
      case CALIBRATION -> calibration(chain.correction());
      case DRIFT ->
          errors.driftC() > 0
              ? "allowance stated for a used couple"
              : "no allowance: nothing published holds for a couple of unknown past";
    };
  }

  static List<String> notes(MeasuringChain chain, double readC) {
    List<String> notes = new ArrayList<>();
    if (!chain.toleranceClass().holds(chain.type(), readC)) {
      notes.add(
          String.format(
              Locale.ROOT,
              "No tolerance class holds here: %s is not published for Type %s at %.0f °C. Its"
                  + " formula is continued, an estimate that nobody warrants.",
              chain.toleranceClass().title(),
              chain.type(),
              readC));
    }
    if (chain.errors().driftC() == 0) {
      notes.add("What a used couple has drifted is not counted.");
    }
    notes.add("How well the probe's tip shares the heat of the ware is not counted.");
    return notes;
  }

  private static String wire(MeasuringChain chain, double readC) {
    String title = chain.toleranceClass().title();
    return chain.toleranceClass().holds(chain.type(), readC)
        ? title + ", new wire"
        : title + " continued beyond what is published: an estimate";
  }

  private static String stated(double value, String words) {
    return value > 0 ? words : "none stated";
  }

  private static String open(double share) {
    return share < 1
        ? String.format(
            Locale.ROOT, "; %.0f %% of it, which the calibration leaves open", 100 * share)
        : "";
  }

  private static String calibration(Correction correction) {
    int points = correction.points().size();
    return switch (points) {
      case 0 -> "not calibrated";
      case 1 -> "expanded uncertainty of the correction, from 1 point";
      default -> "expanded uncertainty of the correction, from " + points + " points";
    };
  }
}
