package org.climbwatch.thermocouple;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The printed coefficients, from a resource of the program. The file names its source on top.
 *
 * <p>The only class of the core that reads anything; what it reads never changes. The text is
 * searched as a whole and only the rows asked for are cut into cells: a daemon needs a tenth of it,
 * and the start waits for it.
 */
final class CoefficientFile {
  private static final String NAME = "nist-its90-coefficients.csv";

  /** Columns of the file: type, direction, range_lo, range_hi, unit_lo_hi, order, coefficient. */
  private static final int COLUMNS = 7;

  private CoefficientFile() {}

  /** E(t) of a type. */
  static ReferenceFunction forward(ThermocoupleType type) {
    String text = text();
    double[] bump = new double[0];
    for (Polynomial exponential : polynomials(text, type, "forward_exponential")) {
      bump = exponential.coefficients();
    }
    return new ReferenceFunction(polynomials(text, type, "forward"), bump);
  }

  /** The polynomials of a type and a direction, one for each range, from the lowest range up. */
  static List<Polynomial> polynomials(String text, ThermocoupleType type, String direction) {
    List<Polynomial> pieces = new ArrayList<>();
    double low = Double.NaN;
    double high = Double.NaN;
    double[] coefficients = new double[0];
    for (String[] row : rows(text, type.name(), direction)) {
      double rowLow = Double.parseDouble(row[2]);
      boolean sameRange = rowLow == low;
      if (!sameRange && coefficients.length > 0) {
        pieces.add(new Polynomial(low, high, coefficients));
      }
      low = rowLow;
      high = Double.parseDouble(row[3]);
      coefficients =
          sameRange ? Arrays.copyOf(coefficients, coefficients.length + 1) : new double[1];
      coefficients[coefficients.length - 1] = Double.parseDouble(row[6]);
    }
    if (coefficients.length > 0) {
      pieces.add(new Polynomial(low, high, coefficients));
    }
    return pieces;
  }

  static String text() {
    try (InputStream in = CoefficientFile.class.getResourceAsStream(NAME)) {
      return new String(in.readAllBytes(), StandardCharsets.US_ASCII);
    } catch (IOException broken) {
      throw new UncheckedIOException("cannot read the coefficients in the program", broken);
    }
  }

  /** The rows of a type and a direction stand together in the file, lowest order first. */
  private static List<String[]> rows(String text, String type, String direction) {
    List<String[]> rows = new ArrayList<>();
    // concat, because the JDK's set-up for joining text with + takes longer than the whole reading
    String start = "\n".concat(type).concat(",").concat(direction).concat(",");
    for (int at = text.indexOf(start); at >= 0 && text.startsWith(start, at); ) {
      int end = text.indexOf('\n', at + 1);
      rows.add(cells(text.substring(at + 1, end)));
      at = end;
    }
    return rows;
  }

  private static String[] cells(String line) {
    String[] cells = new String[COLUMNS];
    int from = 0;
    for (int i = 0; i < COLUMNS - 1; i++) {
      int comma = line.indexOf(',', from);
      cells[i] = line.substring(from, comma);
      from = comma + 1;
    }
    cells[COLUMNS - 1] = line.substring(from);
    return cells;
  }
}
