package org.climbwatch.app;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.climbwatch.thermocouple.ReferencePoint;

/** Asks what the probe is compared with, and says what to mind. */
final class ReferenceQuestions {
  static final String ICE = "ice";
  static final String BOILING = "boiling";
  static final String COMPARISON = "comparison";

  private static final List<String> WATER_CAUTION =
      List.of(
          "  CAUTION. Water and electricity: the amplifier, its supply and the probe's head stay"
              + " dry and",
          "  away from the bath. Only a bare tip or a closed metal sheath, cold, goes into water: a"
              + " ceramic",
          "  tube soaks it up and bursts in the next firing, a hot one shatters. If a bare tip in"
              + " water reads",
          "  as a short to ground, put a thin plastic bag over it.");
  private static final String SCALD_CAUTION =
      "  Boiling water and steam scald: a steady pot, gloves, and no lead that can pull it over.";
  private static final String HEAT_CAUTION =
      "  CAUTION. Hot kiln: gloves and eye protection; both tips close together in the same heat.";

  private final Dialogue dialogue;

  ReferenceQuestions(Dialogue dialogue) {
    this.dialogue = dialogue;
  }

  /** What to do before the probe is listened to. */
  void prepare(String how) throws IOException {
    switch (how) {
      case ICE -> {
        WATER_CAUTION.forEach(dialogue::say);
        dialogue.say(
            "  Crushed ice, wetted so that water fills the gaps, stirred; the tip deep in the ice,"
                + " off the bottom.");
      }
      case BOILING -> {
        WATER_CAUTION.forEach(dialogue::say);
        dialogue.say(SCALD_CAUTION);
        dialogue.say("  A rolling boil; the tip a few centimetres under, clear of the pot.");
      }
      default -> dialogue.say(HEAT_CAUTION);
    }
    dialogue.ask("Wait until the reading stands still, then press Enter.", answer -> answer);
  }

  /** What the temperature was while the probe was listened to. */
  ReferencePoint reference(String how) throws IOException {
    return switch (how) {
      case ICE -> ReferencePoint.ice();
      case BOILING -> boiling();
      default -> instrument();
    };
  }

  private ReferencePoint boiling() throws IOException {
    return dialogue.ask(
        "Altitude, such as \"420 m\", or the barometer here, such as \"964 hPa\"? (not the figure"
            + " of a weather report, which is for sea level)",
        ReferenceQuestions::boiling);
  }

  /** A barometer at home is taken to be good to 0.3 kPa: common practice, from memory. */
  private static ReferencePoint boiling(String answer) {
    String text = answer.toLowerCase(Locale.ROOT);
    if (text.endsWith("kpa")) {
      return ReferencePoint.boilingAtPressure(before(text, "kpa"), 0.3);
    }
    if (text.endsWith("hpa")) {
      return ReferencePoint.boilingAtPressure(before(text, "hpa") / 10, 0.3);
    }
    if (text.endsWith("mbar")) {
      return ReferencePoint.boilingAtPressure(before(text, "mbar") / 10, 0.3);
    }
    if (text.endsWith("m")) {
      return ReferencePoint.boilingAtAltitude(before(text, "m"));
    }
    throw new IllegalArgumentException("write the unit, too: m, hPa, mbar or kPa");
  }

  private static double before(String text, String unit) {
    return Dialogue.parsed(text.substring(0, text.length() - unit.length()).strip());
  }

  private ReferencePoint instrument() throws IOException {
    String name = dialogue.text("Which instrument?");
    double readsC = dialogue.number("What did it read meanwhile, in C?", -270, 1820);
    double expandedC =
        dialogue.number("How far off may it be, +/- C (k = 2, from its certificate)?", 0, 100);
    return new ReferencePoint(name, readsC, expandedC);
  }
}
