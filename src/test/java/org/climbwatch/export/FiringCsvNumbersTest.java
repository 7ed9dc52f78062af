package org.climbwatch.export;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.Instant;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Commons CSV, BigDecimal and Instant are the independent readers. */
class FiringCsvNumbersTest {
  private static final int NONE = FiringCsv.NONE;

  @Property(tries = 500)
  void everyNumberIsReadBackAsItWas(
      @ForAll @LongRange(min = 0, max = 4_000_000_000_000L) long wallMs,
      @ForAll @LongRange(min = -1_000_000_000L, max = 1_000_000_000_000L) long elapsedMs,
      @ForAll @IntRange(min = NONE + 1) int temperature,
      @ForAll @IntRange(min = NONE + 1) int uncertainty,
      @ForAll @IntRange(min = NONE + 1) int climb,
      @ForAll @IntRange(min = NONE + 1) int emf,
      @ForAll @IntRange(min = NONE + 1) int cold,
      @ForAll @IntRange(min = 1, max = 1_000_000) int samples,
      @ForAll @IntRange(min = 0) int spread)
      throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    FiringCsv each = new FiringCsv(bytes);
    each.reading(
        wallMs,
        elapsedMs,
        "upper",
        temperature,
        uncertainty,
        climb,
        emf,
        cold,
        "good",
        "climbing",
        samples,
        spread,
        spread);
    each.flush();

    CSVRecord row = only(bytes.toString(UTF_8));
    assertThat(Instant.parse(row.get(0)).toEpochMilli()).isEqualTo(wallMs);
    assertThat(row.get(1)).satisfies(cell -> isNumber(cell, elapsedMs, 3));
    assertThat(row.get(3)).satisfies(cell -> isNumber(cell, temperature, 3));
    assertThat(row.get(4)).satisfies(cell -> isNumber(cell, uncertainty, 2));
    assertThat(row.get(5)).satisfies(cell -> isNumber(cell, climb, 1));
    assertThat(row.get(6)).satisfies(cell -> isNumber(cell, emf, 4));
    assertThat(row.get(7)).satisfies(cell -> isNumber(cell, cold, 3));
    assertThat(row.get(12)).isEqualTo(Integer.toString(samples));
    assertThat(row.get(13)).satisfies(cell -> isNumber(cell, spread, 4));
    assertThat(row.get(14)).satisfies(cell -> isNumber(cell, spread, 3));
  }

  private static void isNumber(String cell, long value, int places) {
    assertThat(new BigDecimal(cell)).isEqualByComparingTo(BigDecimal.valueOf(value, places));
  }

  private static CSVRecord only(String text) throws IOException {
    try (CSVParser parser = CSVFormat.RFC4180.parse(new StringReader(text))) {
      return parser.getRecords().get(0);
    }
  }
}
