package org.climbwatch.app;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.climbwatch.journal.Calibration;
import org.climbwatch.thermocouple.Comparison;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ReferencePoint;
import org.climbwatch.watch.ProbeSettings;

/** Leads through the comparison of a probe, point by point, to the record that follows. */
final class CalibrationGuide {
  /** °C: comparisons that read closer together are repeats of one point. */
  private static final double SAME_POINT_C = 5;

  private static final List<String> STEPS =
      List.of(
          ReferenceQuestions.ICE,
          ReferenceQuestions.BOILING,
          ReferenceQuestions.COMPARISON,
          "new-couple",
          "done");

  /** Listens to a probe for a while. */
  interface Ear {
    /**
     * @return empty when too few readings were good; the reason has been told then
     */
    Optional<SteadyReading> listen(int probe) throws IOException, InterruptedException;
  }

  private final Dialogue dialogue;
  private final ReferenceQuestions questions;
  private final List<ProbeSettings> probes;
  private final List<Calibration> recorded;
  private final Ear ear;
  private final Supplier<Instant> clock;
  private final List<Comparison> comparisons = new ArrayList<>();
  private final Set<String> how = new LinkedHashSet<>();
  private final List<String> notes = new ArrayList<>();

  CalibrationGuide(
      Dialogue dialogue,
      List<ProbeSettings> probes,
      List<Calibration> recorded,
      Ear ear,
      Supplier<Instant> clock) {
    this.dialogue = dialogue;
    this.questions = new ReferenceQuestions(dialogue);
    this.probes = probes;
    this.recorded = recorded;
    this.ear = ear;
    this.clock = clock;
  }

  /**
   * Asks, listens and asks.
   *
   * @return what is to be recorded; empty when nothing is
   */
  Optional<Calibration> lead() throws IOException, InterruptedException {
    int index = chooseProbe();
    ProbeSettings probe = probes.get(index);
    tellLast(probe.name());
    while (true) {
      String step = dialogue.choice("Compare with what?", STEPS);
      if (step.equals("new-couple")) {
        return newCouple(probe.name());
      }
      if (step.equals("done")) {
        return comparisons.isEmpty() ? Optional.empty() : finished(probe.name());
      }
      compare(index, step);
    }
  }

  private int chooseProbe() throws IOException {
    List<String> names = probes.stream().map(ProbeSettings::name).toList();
    return names.size() == 1 ? 0 : names.indexOf(dialogue.choice("Which probe?", names));
  }

  private void tellLast(String probe) {
    Optional<Calibration> last = Calibration.latest(recorded, probe);
    if (last.isEmpty()) {
      dialogue.say("Probe " + probe + ": never checked.");
      return;
    }
    dialogue.say(
        "Probe "
            + probe
            + ": last recorded on "
            + last.get().at().atOffset(ZoneOffset.UTC).toLocalDate()
            + " by "
            + last.get().who()
            + ", "
            + last.get().how()
            + ".");
    dialogue.say(
        "A new record takes the place of that one: compare at all points that are to count.");
  }

  private void compare(int index, String step) throws IOException, InterruptedException {
    questions.prepare(step);
    Optional<SteadyReading> heard = ear.listen(index);
    if (heard.isEmpty()) {
      return;
    }
    SteadyReading reading = heard.get();
    dialogue.say("  The probe " + reading.text() + ".");
    if (!reading.steady() && !dialogue.yes("It has not come to rest. Take it all the same?")) {
      return;
    }
    ReferencePoint reference = questions.reference(step);
    if (!fits(probes.get(index).chain(), reading, reference)) {
      return;
    }
    if (dialogue.yes("Keep this point?")) {
      how.add(step);
      notes.add(note(reading, reference));
    } else {
      comparisons.remove(comparisons.size() - 1);
    }
  }

  /** Takes the comparison for now and tells what follows; answers whether it can be taken. */
  private boolean fits(MeasuringChain chain, SteadyReading reading, ReferencePoint reference) {
    double expandedC =
        reading.expandedC(chain.errors(), chain.type().seebeckUvPerC(reading.meanC()));
    int kept = comparisons.size();
    try {
      comparisons.add(new Comparison(reading.meanC(), expandedC, reference));
      tell(correction());
      return true;
    } catch (IllegalArgumentException impossible) {
      // what is impossible by itself was never added: the points kept before must stay
      comparisons.subList(kept, comparisons.size()).clear();
      dialogue.say("  Not taken: " + impossible.getMessage());
      return false;
    }
  }

  private Correction correction() {
    return Comparison.correction(comparisons, SAME_POINT_C);
  }

  private void tell(Correction correction) {
    dialogue.say("  The correction that follows:");
    for (Correction.Point point : correction.points()) {
      dialogue.say(
          String.format(
              Locale.ROOT,
              "    at %8.2f C as read, add %+.2f C, +/- %.2f C (k = 2)",
              point.atC(),
              point.addC(),
              point.expandedC()));
    }
  }

  private static String note(SteadyReading reading, ReferencePoint reference) {
    return String.format(
        Locale.ROOT,
        "%s %.2f +/- %.2f C: %s",
        reference.name(),
        reference.temperatureC(),
        reference.expandedC(),
        reading.text());
  }

  private Optional<Calibration> finished(String probe) throws IOException {
    tell(correction());
    return confirmed(probe, String.join(" ", how), correction(), String.join("; ", notes));
  }

  private Optional<Calibration> newCouple(String probe) throws IOException {
    dialogue.say(
        "  What was found of the couple before no longer holds: nothing is added from here on.");
    return confirmed(
        probe, Calibration.NEW_COUPLE, Correction.NONE, dialogue.text("Which couple is it?"));
  }

  private Optional<Calibration> confirmed(
      String probe, String how, Correction correction, String note) throws IOException {
    String who = dialogue.text("Who are you?");
    return dialogue.yes("Write this to the journal?")
        ? Optional.of(new Calibration(clock.get(), probe, who, how, correction, note))
        : Optional.empty();
  }
}
