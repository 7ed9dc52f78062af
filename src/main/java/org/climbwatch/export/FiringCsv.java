package org.climbwatch.export;

import java.io.IOException;
import java.io.OutputStream;

/**
 * Writes a firing as CSV: RFC 4180, UTF-8, a header row, '.' decimals, empty for none.
 *
 * <p>One row for each reading, and one for each deed of the potter with its text in {@code note}
 * and its word in {@code action}, which lets a replay do the same again. Temperatures have three
 * places, so that what an instrument linearised itself comes back unchanged.
 */
public final class FiringCsv {
  /** In place of a number that a row does not have. */
  public static final int NONE = Integer.MIN_VALUE;

  private static final String HEADER =
      "time,elapsed_s,probe,temperature_c,uncertainty_c,climb_c_per_h,emf_mv,cold_junction_c,"
          + "quality,phase,note,action,samples,spread_mv,spread_c";

  private final ByteText text;
  private final UtcText utc = new UtcText();
  private final Cell probeCell = new Cell();
  private final Cell qualityCell = new Cell();
  private final Cell phaseCell = new Cell();

  /**
   * @param out left open; needs no buffer of its own
   */
  public FiringCsv(OutputStream out) {
    text = new ByteText(out);
  }

  /** The header row. */
  public void header() throws IOException {
    text.put(HEADER);
    text.endRow();
  }

  /**
   * One reading.
   *
   * @param wallMs milliseconds since 1970, UTC
   * @param elapsedMs since the firing's first reading; negative before it
   * @param temperatureMilliC 0.001 °C, or {@link #NONE}
   * @param uncertaintyCentiC 0.01 °C, or {@link #NONE}
   * @param climbDeciCPerHour 0.1 °C/h, or {@link #NONE}
   * @param emfTenthUv 0.1 µV, or {@link #NONE}
   * @param coldJunctionMilliC 0.001 °C, or {@link #NONE}
   * @param quality {@code good} or a fault's word
   * @param samples how many looks the signal is the middle of, or {@link #NONE}
   * @param spreadTenthUv 0.1 µV, spread of the emf of several looks, or {@link #NONE}
   * @param spreadMilliC 0.001 °C, spread of several temperatures that the instrument linearised
   *     itself, or {@link #NONE}
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
      String phase,
      int samples,
      int spreadTenthUv,
      int spreadMilliC)
      throws IOException {
    times(wallMs, elapsedMs);
    text.put(probeCell.bytes(probe));
    text.put(',');
    thousandths(temperatureMilliC);
    if (uncertaintyCentiC != NONE) {
      text.putHundredths(uncertaintyCentiC);
    }
    text.put(',');
    if (climbDeciCPerHour != NONE) {
      text.putTenths(climbDeciCPerHour);
    }
    text.put(',');
    if (emfTenthUv != NONE) {
      text.putTenThousandths(emfTenthUv);
    }
    text.put(',');
    thousandths(coldJunctionMilliC);
    text.put(qualityCell.bytes(quality));
    text.put(',');
    text.put(phaseCell.bytes(phase));
    text.put(",,,");
    if (samples != NONE) {
      text.putWhole(samples);
    }
    text.put(',');
    if (spreadTenthUv != NONE) {
      text.putTenThousandths(spreadTenthUv);
    }
    text.put(',');
    if (spreadMilliC != NONE) {
      text.putThousandths(spreadMilliC);
    }
    text.endRow();
  }

  /**
   * Something that the potter did, or that the program did to the record.
   *
   * @param phase at that time; for {@code declared} the declared one
   * @param note text of a note, name of the firing, or "kind: who" of an alarm's deed ("kind for
   *     1800 s: who" of a shelved one) with a note of theirs below, or "matter: text" of a report
   * @param action {@code began}, {@code ended}, {@code declared}, {@code noted}, {@code
   *     acknowledged}, {@code shelved}, {@code unshelved}, {@code reset}, {@code resumed}, {@code
   *     reported}, {@code configured} or {@code remarked}
   */
  public void deed(long wallMs, long elapsedMs, String phase, String note, String action)
      throws IOException {
    deed(wallMs, elapsedMs, "", phase, note, action);
  }

  /** The same, of a probe; blank for none. */
  public void deed(
      long wallMs, long elapsedMs, String probe, String phase, String note, String action)
      throws IOException {
    times(wallMs, elapsedMs);
    text.put(Cell.escaped(probe));
    text.put(",,,,,,,");
    text.put(phaseCell.bytes(phase));
    text.put(',');
    text.put(Cell.escaped(note));
    text.put(',');
    text.put(Cell.escaped(action));
    text.put(",,,");
    text.endRow();
  }

  /** Passes on what is still held. */
  public void flush() throws IOException {
    text.flush();
  }

  private void thousandths(int value) {
    if (value != NONE) {
      text.putThousandths(value);
    }
    text.put(',');
  }

  private void times(long wallMs, long elapsedMs) {
    utc.put(text, wallMs);
    text.put(',');
    if (elapsedMs < 0) {
      text.put('-');
    }
    long sizeMs = Math.abs(elapsedMs);
    int seconds = (int) (sizeMs / 1000);
    int millis = (int) (sizeMs - seconds * 1000L);
    text.putWhole(seconds);
    if (millis != 0) {
      text.put('.');
      text.putTriple(millis);
    }
    text.put(',');
  }
}
