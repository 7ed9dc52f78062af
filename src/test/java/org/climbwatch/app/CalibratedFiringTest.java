package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.journal.Calibration;
import org.climbwatch.journal.Curve;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.Journal;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;
import org.climbwatch.web.CorrectedBy;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A firing recorded under a calibration, and told with and without it. */
class CalibratedFiringTest {
  /** NIST SRD 60, Type K, cold junction at 0 °C: 500 °C gives 20.644 mV. */
  private static final double EMF_MV = 20.644;

  private static final Configuration CONFIGURATION =
      Configuration.ofText("kiln.toml", "[[probe]]\nsource = \"model\"\n");
  private static final String PROBE = CONFIGURATION.watch().probe().name();

  private static final long BOOT_MS = 1_767_286_800_000L;

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void nameTheFile() {
    file = folder.resolve("journal.sqlite");
  }

  private static Calibration adding(double addC) {
    Correction correction = new Correction(List.of(new Correction.Point(500, addC, 1)));
    return new Calibration(Instant.EPOCH, PROBE, "Ann", "comparison", correction, "");
  }

  /** A minute at 500 °C as the daemon keeps it, 3 °C added, and 5 found later. */
  private void record() {
    try (Journal journal = Journal.open(file, new TextCodec())) {
      int boot = journal.boot("boot-a", 0, BOOT_MS);
      journal.calibrated(adding(3));
      WatchSettings settings = Corrections.inForce(CONFIGURATION.watch(), journal.calibrations());
      Watch watch = new Watch(settings);
      List<Input> inputs = new ArrayList<>();
      inputs.add(new Input.Configured(new Moment(boot, 0), settings));
      inputs.add(new Input.Began(new Moment(boot, 0), "stoneware"));
      for (int second = 0; second < 60; second++) {
        Moment at = new Moment(boot, second * 1000L);
        inputs.add(
            new Input.Measured(
                second == 30
                    ? Reading.faulty(at, PROBE, org.climbwatch.reading.Fault.OPEN_CIRCUIT)
                    : Reading.emf(at, PROBE, EMF_MV, 0)));
      }
      inputs.add(new Input.Ended(new Moment(boot, 60_000)));
      for (Input input : inputs) {
        Outcome outcome = watch.accept(input);
        if (outcome.judged().isPresent()) {
          journal.announce(outcome.judged().get(), outcome.events());
        } else {
          journal.record(input, outcome.events());
        }
      }
      journal.calibrated(adding(5));
    }
  }

  private List<CSVRecord> exported(CorrectedBy by) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Firings firings = Firings.open(file)) {
      FiringFiles.csv(firings, firings.latest().orElseThrow(), by, out);
    }
    String text = out.toString(StandardCharsets.UTF_8);
    return CSVFormat.RFC4180
        .builder()
        .setHeader()
        .setSkipHeaderRecord(true)
        .get()
        .parse(new StringReader(text))
        .getRecords();
  }

  @Test
  void temperaturesAreToldAsShownAsReadOrByTheLatestCalibration() throws IOException {
    record();

    assertThat(temperatures(exported(CorrectedBy.RECORDED)))
        .hasSize(59)
        .allSatisfy(t -> assertThat(t).isCloseTo(503, within(0.02)));
    assertThat(temperatures(exported(CorrectedBy.NONE)))
        .hasSize(59)
        .allSatisfy(t -> assertThat(t).isCloseTo(500, within(0.02)));
    assertThat(temperatures(exported(CorrectedBy.LATEST)))
        .hasSize(59)
        .allSatisfy(t -> assertThat(t).isCloseTo(505, within(0.02)));
  }

  /** What is found of another couple says nothing of the one that measured. */
  @Test
  void theLatestOfAFiringIsThatOfItsOwnCouple() throws IOException {
    record();
    Instant later = Instant.ofEpochMilli(BOOT_MS).plusSeconds(86_400);
    try (Journal journal = Journal.open(file, new TextCodec())) {
      journal.calibrated(
          new Calibration(later, PROBE, "Ann", Calibration.NEW_COUPLE, Correction.NONE, ""));
      journal.calibrated(
          new Calibration(later, PROBE, "Ann", "comparison", adding(-9).correction(), ""));
    }

    assertThat(temperatures(exported(CorrectedBy.LATEST)))
        .hasSize(59)
        .allSatisfy(t -> assertThat(t).isCloseTo(505, within(0.02)));
  }

  @Test
  void aNewCoupleBeginsItsCountOfFiringsAnew() {
    record();
    assertThat(ProbeLives.of(CONFIGURATION, file).get(0).firings()).isEqualTo(1);
    try (Journal journal = Journal.open(file, new TextCodec())) {
      Instant later = Instant.ofEpochMilli(BOOT_MS).plusSeconds(86_400);
      journal.calibrated(
          new Calibration(later, PROBE, "Ann", Calibration.NEW_COUPLE, Correction.NONE, ""));
    }

    assertThat(ProbeLives.of(CONFIGURATION, file).get(0).firings()).isZero();
  }

  @Test
  void curvesAreToldTheSameWaysWithTheirGaps() {
    record();
    try (Firings firings = Firings.open(file)) {
      long id = firings.latest().orElseThrow();
      Curve recorded = FiringFiles.curves(firings, id, CorrectedBy.RECORDED, 1000).get(0).curve();
      Curve asRead = FiringFiles.curves(firings, id, CorrectedBy.NONE, 1000).get(0).curve();
      Curve latest = FiringFiles.curves(firings, id, CorrectedBy.LATEST, 1000).get(0).curve();

      assertThat(asRead.elapsedMs()).isEqualTo(recorded.elapsedMs());
      for (int i = 0; i < recorded.points(); i++) {
        double shownC = recorded.temperatureC()[i];
        // NaN marks the open circuit, in all of them alike
        assertThat(asRead.temperatureC()[i]).isEqualTo(shownC - 3, within(0.002));
        assertThat(latest.temperatureC()[i]).isEqualTo(shownC + 2, within(0.002));
      }
      assertThat(recorded.temperatureC()).contains(Double.NaN).hasSize(60);
    }
  }

  @Test
  void allButTemperatureUncertaintyAndClimbStaysAsRecorded() throws IOException {
    record();
    List<CSVRecord> recorded = exported(CorrectedBy.RECORDED);
    List<CSVRecord> asRead = exported(CorrectedBy.NONE);

    assertThat(asRead).hasSameSizeAs(recorded);
    for (int i = 0; i < recorded.size(); i++) {
      for (String column :
          List.of("time", "elapsed_s", "probe", "emf_mv", "quality", "phase", "note", "action")) {
        assertThat(asRead.get(i).get(column)).isEqualTo(recorded.get(i).get(column));
      }
    }
    assertThat(recorded).filteredOn(row -> row.get("emf_mv").equals("20.6440")).hasSize(59);
    assertThat(recorded).filteredOn(row -> row.get("quality").equals("open_circuit")).hasSize(1);
    assertThat(uncertaintyC(asRead)).as("not calibrated").isGreaterThan(uncertaintyC(recorded));
  }

  @Test
  void computedAgainUnderTheSameCalibrationIsWhatWasShown() throws IOException {
    record();
    try (Journal journal = Journal.open(file, new TextCodec())) {
      journal.calibrated(adding(3));
    }

    assertThat(exported(CorrectedBy.LATEST).stream().map(CSVRecord::toList).toList())
        .isEqualTo(exported(CorrectedBy.RECORDED).stream().map(CSVRecord::toList).toList());
  }

  @Test
  void theDaemonTakesUpTheLatestCalibrationAndRecordsIt() {
    try (Journal journal = Journal.open(file, new TextCodec())) {
      journal.calibrated(adding(3));
      journal.calibrated(adding(5));
    }
    try (Engine engine =
        new Engine(CONFIGURATION, new KilnTime(1), Journal.open(file, new TextCodec()))) {
      assertThat(engine.configuration().watch().probe().chain().correction())
          .isEqualTo(adding(5).correction());
    }

    List<Input> replayed = new ArrayList<>();
    try (Journal journal = Journal.open(file, new TextCodec())) {
      journal.replay(replayed::add);
    }
    assertThat(replayed)
        .filteredOn(Input.Configured.class::isInstance)
        .last()
        .satisfies(
            input ->
                assertThat(((Input.Configured) input).settings().probe().chain().correction())
                    .isEqualTo(adding(5).correction()));
  }

  private static double uncertaintyC(List<CSVRecord> rows) {
    return rows.stream()
        .map(row -> row.get("uncertainty_c"))
        .filter(text -> !text.isEmpty())
        .mapToDouble(Double::parseDouble)
        .findFirst()
        .orElseThrow();
  }

  private static List<Double> temperatures(List<CSVRecord> rows) {
    return rows.stream()
        .map(row -> row.get("temperature_c"))
        .filter(text -> !text.isEmpty())
        .map(Double::valueOf)
        .toList();
  }
}
