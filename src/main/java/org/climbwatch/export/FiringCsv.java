package org.climbwatch.export;

import java.io.IOException;
import java.io.OutputStream;

/**
 * Writes a firing as CSV: RFC 4180, UTF-8, a header row, '.' decimals, empty for none.
 *
 * <p>One row for each reading, and one for each deed of the potter with its text in {@code note}
 * and its word in {@code action}, which lets a replay do the same again.
 */
public final class FiringCsv {
  /** In place of a number that there is none of. */
  public static final int NONE = Integer.MIN_VALUE;

  private static final String HEADER =
      "time,elapsed_s,probe,temperature_c,uncertainty_c,climb_c_per_h,emf_mv,cold_junction_c,"
          + "quality,phase,note,action";

  private final ByteText text;
  private final UtcText utc = new UtcText();

  public FiringCsv(OutputStream out) {
    text = new ByteText(out);
  }

  public void header() throws IOException {
    text.put(HEADER);
    text.endRow();
  }

  /**
   * One reading. Units are those of the journal; {@link #NONE} leaves a cell empty.
   *
   * @param wallMs milliseconds since 1970, UTC
   * @param elapsedMs since the firing's first reading
   * @param temperatureMilliC 0.001 °C
   * @param uncertaintyCentiC 0.01 °C
   * @param climbDeciCPerHour 0.1 °C/h
   * @param emfTenthUv 0.1 µV
   * @param coldJunctionMilliC 0.001 °C
   * @param quality {@code good} or a fault's word
   */
  public void reading(
      long wallMs,
      long elapsedMs,
      String probe,
      int temperatureMilliC,
      int uncertaintyCentiC,
      int climbDeciCPerHour,
      int emfTenthUv,
      int coldJunctionMilliC,
      String quality,
      String phase)
      throws IOException {
    times(wallMs, elapsedMs);
    cell(probe);
    text.put(',');
    decimal(temperatureMilliC, 3, 1000);
    decimal(uncertaintyCentiC, 2, 100);
    decimal(climbDeciCPerHour, 1, 10);
    decimal(emfTenthUv, 4, 10_000);
    decimal(coldJunctionMilliC, 3, 1000);
    text.put(quality);
    text.put(',');
    text.put(phase);
    text.put(',');
    text.put(',');
    text.endRow();
  }

  /** Something that the potter did, or that the program did to the record. */
  public void deed(long wallMs, long elapsedMs, String phase, String note, String action)
      throws IOException {
    times(wallMs, elapsedMs);
    text.put(",,,,,,,");
    text.put(phase);
    text.put(',');
    cell(note);
    text.put(',');
    text.put(action);
    text.endRow();
  }

  public void flush() throws IOException {
    text.flush();
  }

  private void times(long wallMs, long elapsedMs) {
    utc.put(text, wallMs);
    text.put(',');
    if (elapsedMs % 1000 == 0) {
      text.put(elapsedMs / 1000);
    } else {
      text.putDecimal(elapsedMs, 3, 1000);
    }
    text.put(',');
  }

  private void decimal(int value, int places, int one) {
    if (value != NONE) {
      text.putDecimal(value, places, one);
    }
    text.put(',');
  }

  /**
   * A cell of foreign text. What a spreadsheet would run as a formula gets an apostrophe in front,
   * and so does what begins with one, so that a reader can take it away again.
   */
  private void cell(String value) {
    String safe = value.isEmpty() || "=+-@\t\r'".indexOf(value.charAt(0)) < 0 ? value : "'" + value;
    boolean quoted = false;
    for (int i = 0; i < safe.length() && !quoted; i++) {
      quoted = ",\"\r\n".indexOf(safe.charAt(i)) >= 0;
    }
    text.put(quoted ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe);
  }
}
