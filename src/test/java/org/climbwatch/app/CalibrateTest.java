package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Calibration;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.Journal;
import org.climbwatch.thermocouple.Correction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code check --calibrate} from the questions to the record, with a probe that reads 0.4 °C. */
class CalibrateTest {
  @TempDir Path folder;
  private Path config;
  private Path journal;

  private record Finished(int exit, String out, String err) {}

  @BeforeEach
  void layOut() throws Exception {
    journal = folder.resolve("data/journal.sqlite");
    StringBuilder csv = new StringBuilder("elapsed_s,temperature_c\n");
    for (int second = 0; second < 60; second++) {
      csv.append(second).append(',').append(second % 2 == 0 ? "0.35" : "0.45").append('\n');
    }
    Path recording = Files.writeString(folder.resolve("bath.csv"), csv);
    config =
        Files.writeString(
            folder.resolve("kiln.toml"),
            """
            [[probe]]
            name = "upper"
            source = "recording"
            amplifier_error_c = 2
            step_c = 0.25
            [probe.recording]
            file = "%s"
            speed = 100
            """
                .formatted(recording));
  }

  private Finished calibrate(String... answers) {
    String input = String.join("\n", answers) + "\n";
    InputStream usual = System.in;
    System.setIn(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)));
    try {
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      int exit =
          Main.commandLine()
              .setOut(new PrintWriter(out))
              .setErr(new PrintWriter(err))
              .execute(
                  "check",
                  "--calibrate",
                  "--seconds",
                  "19",
                  "--config",
                  config.toString(),
                  "--data",
                  folder.resolve("data").toString());
      return new Finished(exit, out.toString(), err.toString());
    } finally {
      System.setIn(usual);
    }
  }

  private List<Calibration> recorded() {
    try (Firings firings = Firings.open(journal)) {
      return firings.calibrations();
    }
  }

  @Test
  void anIceBathGivesTheCorrectionItsUncertaintyAndARecord() {
    Finished done = calibrate("ice", "", "yes", "done", "Ann", "yes");

    assertThat(done.exit()).as(done.err()).isZero();
    assertThat(done.out())
        .contains("never checked", "CAUTION", "reads 0.40 C", "add -0.40 C", "Written to");
    assertThat(recorded()).hasSize(1);
    Calibration record = recorded().get(0);
    assertThat(record.probe()).isEqualTo("upper");
    assertThat(record.who()).isEqualTo("Ann");
    assertThat(record.how()).isEqualTo("ice");
    Correction.Point point = record.correction().points().get(0);
    assertThat(point.atC()).isCloseTo(0.4, within(0.006));
    assertThat(point.addC()).isCloseTo(-0.4, within(0.006));
    // GUM 5.1.2, 4.2.3 and 4.3.7: the bath's 0.2; twice 0.0513 / sqrt(20) of scatter and half a
    // step of 0.25 as a limit; as root of the sum of squares
    double readingC = 2 * Math.hypot(0.0513 / Math.sqrt(20), 0.125 / Math.sqrt(3));
    assertThat(point.expandedC()).isCloseTo(Math.hypot(0.2, readingC), within(0.001));
  }

  @Test
  void anotherInstrumentCountsWithItsOwnUncertainty() {
    Finished done =
        calibrate("comparison", "", "reference couple", "2.4", "1,5", "yes", "done", "Ann", "yes");

    assertThat(done.exit()).as(done.err()).isZero();
    Correction.Point point = recorded().get(0).correction().points().get(0);
    assertThat(point.addC()).isCloseTo(2, within(0.006));
    assertThat(point.expandedC()).isCloseTo(1.5, within(0.01));
    assertThat(recorded().get(0).note()).startsWith("reference couple 2.40 +/- 1.50 C: reads 0.40");
  }

  @Test
  void aWrongAnswerIsToldAndAskedAgain() {
    Finished done =
        calibrate(
            "tea",
            "boiling",
            "",
            "420",
            "420 ft",
            "420 m",
            "done",
            "no",
            "new-couple",
            "K, 3 mm",
            "",
            "Ann",
            "no");

    assertThat(done.exit()).as(done.err()).isZero();
    assertThat(done.out())
        .contains("\"tea\" is none of them; write ice, boiling, comparison")
        .contains("write the unit, too: m, hPa, mbar or kPa")
        .contains("add +98.", "\"done\" is none of them; write yes, no")
        .contains("write 1 to 100 characters", "Nothing was written.");
    assertThat(recorded()).isEmpty();
  }

  @Test
  void withoutFurtherAnswersNothingIsWritten() {
    Finished cut = calibrate("ice", "", "yes", "done", "Ann");

    assertThat(cut.exit()).isEqualTo(2);
    assertThat(cut.err().lines())
        .containsExactly("the answers ended before the end; nothing was written");
    assertThat(recorded()).isEmpty();
  }

  /** Pulled out of the fire meanwhile: it scatters by more than a comparison may. */
  @Test
  void aProbeInWildMotionIsNotTakenAndThePointsKeptBeforeStay() throws Exception {
    String answers = String.join("\n", "ice", "", "yes", "ice", "", "done", "Ann", "yes") + "\n";
    Iterator<SteadyReading> heard =
        List.of(new SteadyReading(0.4, 0.05, 0, 20), new SteadyReading(300, 308, 0, 20)).iterator();
    StringWriter out = new StringWriter();
    CalibrationGuide guide =
        new CalibrationGuide(
            new Dialogue(new BufferedReader(new StringReader(answers)), new PrintWriter(out)),
            Configuration.load(config).watch().probes(),
            List.of(),
            probe -> Optional.of(heard.next()),
            () -> Instant.EPOCH);

    Calibration found = guide.lead().orElseThrow();

    assertThat(out.toString()).contains("Not taken: comparison: read 300.0 °C");
    assertThat(found.correction().points()).hasSize(1);
    assertThat(found.note()).startsWith("ice point 0.00");
  }

  @Test
  void tooFewReadingsAreToldWithHowManyAreNeeded() throws Exception {
    Files.writeString(folder.resolve("bath.csv"), "elapsed_s,temperature_c\n0,0.4\n1,0.4\n");

    Finished done = calibrate("ice", "", "done");

    assertThat(done.out())
        .contains("Too few good readings: 2; needed are 4")
        .contains("Nothing was");
  }

  @Test
  void aNewCoupleForgetsTheCorrection() {
    calibrate("ice", "", "yes", "done", "Ann", "yes");

    Finished done = calibrate("new-couple", "K, 3 mm, of May", "Ann", "yes");

    assertThat(done.out()).contains("last recorded on", "by Ann, ice");
    assertThat(recorded()).extracting(Calibration::how).containsExactly("ice", "new_couple");
    assertThat(Calibration.latest(recorded(), "upper").orElseThrow().correction().isNone())
        .isTrue();
  }

  @Test
  void aJournalThatTheDaemonHoldsIsToldBeforeAnythingIsAsked() {
    try (Journal held = Journal.open(journal, new TextCodec())) {
      assertThat(held.trouble()).isEmpty();
      Finished refused = calibrate("ice");

      assertThat(refused.exit()).isEqualTo(2);
      assertThat(refused.out()).isEmpty();
      assertThat(refused.err()).contains("is in use by another climbwatch", "stop that one first");
    }
  }
}
