package org.climbwatch.export;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.time.Instant;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Apache Commons CSV (its RFC 4180 format) is the independent reader. */
class FiringCsvTest {
  private static final long WALL_MS = Instant.parse("2026-11-25T08:59:59.990Z").toEpochMilli();
  private static final int NONE = FiringCsv.NONE;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final FiringCsv csv = new FiringCsv(out);

  @Test
  void theHeaderNamesTheColumnsOfTheContractAndTheAction() throws IOException {
    csv.header();

    assertThat(text())
        .isEqualTo(
            "time,elapsed_s,probe,temperature_c,uncertainty_c,climb_c_per_h,emf_mv,cold_junction_c,"
                + "quality,phase,note,action,samples,spread_mv,spread_c\r\n");
  }

  @Test
  void aReadingIsOneRowInTheUnitsOfTheHeader() throws IOException {
    csv.reading(
        WALL_MS,
        12_500,
        "upper",
        1_004_523,
        783,
        -1042,
        414_012,
        22_062,
        "good",
        "climbing",
        9,
        123,
        NONE);

    assertThat(text())
        .isEqualTo(
            "2026-11-25T08:59:59.990Z,12.500,upper,1004.523,7.83,-104.2,41.4012,22.062,good,"
                + "climbing,,,9,0.0123,\r\n");
  }

  @Test
  void whatThereIsNoneOfIsEmpty() throws IOException {
    csv.reading(
        WALL_MS,
        0,
        "upper",
        NONE,
        NONE,
        NONE,
        NONE,
        NONE,
        "open_circuit",
        "drying",
        NONE,
        NONE,
        NONE);

    assertThat(text())
        .isEqualTo("2026-11-25T08:59:59.990Z,0,upper,,,,,,open_circuit,drying,,,,,\r\n");
  }

  @Test
  void smallNegativeNumbersKeepTheirSignAndZeros() throws IOException {
    csv.reading(WALL_MS, -7, "upper", -5, -5, -5, -5, -5, "good", "idle", 3, NONE, 5);

    assertThat(text())
        .contains(",-0.007,upper,-0.005,-0.05,-0.5,-0.0005,-0.005,good,")
        .endsWith(",3,,0.005\r\n");
  }

  @Test
  void timeGoesOnThroughMinuteDayAndYear() throws IOException {
    long newYear = Instant.parse("2027-01-01T00:00:00Z").toEpochMilli();
    for (long ms : new long[] {newYear - 1, newYear, newYear + 59_999, newYear + 60_000}) {
      csv.deed(ms, 0, "idle", "", "noted");
    }
    csv.deed(newYear - 86_400_000, 0, "idle", "", "noted");

    assertThat(rows())
        .extracting(row -> row.get(0))
        .containsExactly(
            "2026-12-31T23:59:59.999Z",
            "2027-01-01T00:00:00.000Z",
            "2027-01-01T00:00:59.999Z",
            "2027-01-01T00:01:00.000Z",
            "2026-12-31T00:00:00.000Z");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a shelf fell, cone 9 soft",
        "said \"now\"",
        "two\r\nlines",
        "one\nmore",
        "größer, 窯, 🔥",
        " blanks kept ",
        ",",
        "\""
      })
  void aNoteComesBackFromAnIndependentReader(String note) throws IOException {
    csv.deed(WALL_MS, 1000, "climbing", note, "noted");

    CSVRecord row = rows().get(0);
    assertThat(row.size()).isEqualTo(15);
    assertThat(row.get(9)).isEqualTo("climbing");
    assertThat(row.get(10)).isEqualTo(note);
    assertThat(row.get(11)).isEqualTo("noted");
  }

  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+49", "-gas", "@home", "\tx", "\rx", "'quoted"})
  void whatASpreadsheetWouldRunGetsAnApostrophe(String note) throws IOException {
    csv.deed(WALL_MS, 1000, "climbing", note, "noted");
    csv.reading(
        WALL_MS, 1000, note, NONE, NONE, NONE, NONE, NONE, "good", "climbing", 1, NONE, NONE);

    assertThat(rows().get(0).get(10)).isEqualTo("'" + note);
    assertThat(rows().get(1).get(2)).isEqualTo("'" + note);
  }

  /** Notes that ended a few bytes before the end of the buffer once ran over it. */
  @Test
  void notesOfAnyLengthFitWhereverTheBufferStands() throws IOException {
    String first = "x".repeat(65_000);
    for (int length = 1400; length < 2600; length++) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream(70_000);
      FiringCsv each = new FiringCsv(bytes);
      each.deed(WALL_MS, 0, "climbing", first, "noted");
      int firstRow = 65_000 + ",0,,,,,,,,climbing,,noted,,,\r\n".length() + 24;
      each.deed(WALL_MS, 0, "climbing", "y".repeat(length), "noted");
      each.flush();

      assertThat(bytes.size()).isEqualTo(2 * firstRow - 65_000 + length);
    }
  }

  @Test
  void aNoteLongerThanTheBufferIsWhole() throws IOException {
    csv.deed(WALL_MS, 0, "climbing", "y".repeat(1_000_000), "noted");

    assertThat(rows().get(0).get(10)).hasSize(1_000_000);
  }

  @Test
  void aLongProbeNameFitsInEveryRow() throws IOException {
    String name = "p".repeat(900);
    for (int i = 0; i < 500; i++) {
      csv.reading(WALL_MS, i, name, i, 1, 2, 3, 4, "good", "climbing", 10, 5, NONE);
    }

    assertThat(rows()).hasSize(500).allSatisfy(row -> assertThat(row.get(2)).isEqualTo(name));
  }

  private String text() throws IOException {
    csv.flush();
    return out.toString(UTF_8);
  }

  private List<CSVRecord> rows() throws IOException {
    return parsed(text());
  }

  private static List<CSVRecord> parsed(String text) throws IOException {
    try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(text))) {
      return parser.getRecords();
    }
  }
}
