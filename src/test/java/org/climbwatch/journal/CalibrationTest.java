package org.climbwatch.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.climbwatch.thermocouple.Correction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrationTest {
  private static final Calibration ICE =
      one("crown", "ice", new Correction(List.of(new Correction.Point(0.4, -0.4, 0.28))));
  private static final Calibration BOTH =
      one(
          "crown",
          "ice boiling",
          new Correction(
              List.of(new Correction.Point(0.5, -0.5, 0.3), new Correction.Point(99, 0.1, 0.4))));
  private static final Calibration FLUE =
      one("flue", "ice", new Correction(List.of(new Correction.Point(-1, 1, 0.3))));

  @TempDir Path folder;

  private static Calibration one(String probe, String how, Correction correction) {
    Instant at = Instant.parse("2026-05-03T16:30:00.123Z");
    return new Calibration(at, probe, "Ann", how, correction, "read 0.4 °C; the \"thin\" probe");
  }

  private Path recorded(Calibration... calibrations) {
    Path file = folder.resolve("journal.sqlite");
    try (Journal journal = Journal.open(file, Fixture.CODEC)) {
      for (Calibration each : calibrations) {
        journal.calibrated(each);
      }
      assertThat(journal.calibrations()).containsExactly(calibrations);
    }
    return file;
  }

  @Test
  void aReaderFindsAllAsTheyWereWritten() {
    try (Firings firings = Firings.open(recorded(ICE, FLUE, BOTH))) {
      assertThat(firings.calibrations()).containsExactly(ICE, FLUE, BOTH);
    }
  }

  @Test
  void theLatestOfEachProbeIsInForce() {
    List<Calibration> all = List.of(ICE, FLUE, BOTH);

    assertThat(Calibration.latest(all, "crown")).contains(BOTH);
    assertThat(Calibration.latest(all, "flue")).contains(FLUE);
    assertThat(Calibration.latest(all, "lower")).isEmpty();
  }

  @Test
  void noRecordIsEverAlteredOrDeleted() throws SQLException {
    Path file = recorded(ICE);

    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      assertThatThrownBy(() -> One.change(connection, "UPDATE calibration SET points = ''"))
          .hasMessageContaining("never altered");
      assertThatThrownBy(() -> One.change(connection, "DELETE FROM calibration"))
          .hasMessageContaining("never deleted");
    }
    try (Firings firings = Firings.open(file)) {
      assertThat(firings.calibrations()).containsExactly(ICE);
    }
  }

  @Test
  void aNewCoupleHasNoPointsAndCountsAsNeverChecked() {
    Calibration fresh = one("crown", Calibration.NEW_COUPLE, Correction.NONE);

    assertThat(fresh.checked()).isFalse();
    assertThat(ICE.checked()).isTrue();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> one("crown", Calibration.NEW_COUPLE, ICE.correction()));
    assertThatIllegalArgumentException().isThrownBy(() -> one("crown", "ice", Correction.NONE));
  }
}
