package org.climbwatch.thermocouple;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The printed coefficients, from a resource of the program. The file names its source on top.
 *
 * <p>The only class of the core that reads anything; what it reads never changes.
 */
final class CoefficientFile {
  private static final String NAME = "nist-its90-coefficients.csv";

  private CoefficientFile() {}

  /** The forward function of a type, its pieces from the lowest up. */
  static ReferenceFunction forward(ThermocoupleType type) {
    List<ReferenceFunction.Piece> pieces = new ArrayList<>();
    List<Double> coefficients = new ArrayList<>();
    double[] bump = new double[0];
    String range = "";
    double low = 0;
    double high = 0;
    for (String line : linesOf(type)) {
      String[] cells = line.split(",");
      if (cells[1].equals("forward_exponential")) {
        bump = java.util.Arrays.copyOf(bump, bump.length + 1);
        bump[bump.length - 1] = Double.parseDouble(cells[6]);
      } else if (cells[1].equals("forward")) {
        if (!range.isEmpty() && !range.equals(cells[2])) {
          pieces.add(piece(low, high, coefficients));
          coefficients.clear();
        }
        range = cells[2];
        low = Double.parseDouble(cells[2]);
        high = Double.parseDouble(cells[3]);
        coefficients.add(Double.parseDouble(cells[6]));
      }
    }
    pieces.add(piece(low, high, coefficients));
    return new ReferenceFunction(pieces, bump);
  }

  private static ReferenceFunction.Piece piece(double low, double high, List<Double> coefficients) {
    double[] c = new double[coefficients.size()];
    for (int i = 0; i < c.length; i++) {
      c[i] = coefficients.get(i);
    }
    return new ReferenceFunction.Piece(low, high, c);
  }

  private static List<String> linesOf(ThermocoupleType type) {
    List<String> lines = new ArrayList<>();
    String start = type.name() + ",";
    try (InputStream in = CoefficientFile.class.getResourceAsStream(NAME);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (line.startsWith(start)) {
          lines.add(line);
        }
      }
    } catch (IOException broken) {
      throw new UncheckedIOException("cannot read " + NAME + " in the program", broken);
    }
    return lines;
  }
}
