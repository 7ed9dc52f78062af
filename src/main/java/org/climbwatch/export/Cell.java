package org.climbwatch.export;

import java.nio.charset.StandardCharsets;

/**
 * One cell of a row as bytes, kept while its text stays the same from row to row.
 *
 * <p>What a spreadsheet would run as a formula gets an apostrophe in front, and so does what begins
 * with one, so that a reader can take it away again.
 */
final class Cell {
  private static final String MADE_HARMLESS = "=+-@\t\r'";
  private static final String NEEDS_QUOTES = ",\"\r\n";

  private String text = "";
  private byte[] bytes = new byte[0];

  byte[] bytes(String wanted) {
    if (wanted != text && !wanted.equals(text)) {
      bytes = escaped(wanted).getBytes(StandardCharsets.UTF_8);
      text = wanted;
    }
    return bytes;
  }

  static String escaped(String value) {
    boolean harmful = !value.isEmpty() && MADE_HARMLESS.indexOf(value.charAt(0)) >= 0;
    String safe = harmful ? "'" + value : value;
    boolean quoted = false;
    for (int i = 0; i < safe.length() && !quoted; i++) {
      quoted = NEEDS_QUOTES.indexOf(safe.charAt(i)) >= 0;
    }
    return quoted ? "\"" + safe.replace("\"", "\"\"") + "\"" : safe;
  }
}
