package org.climbwatch.thermocouple;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Rows of a published table beside the tests, without its comments and its header. */
final class Table {
  private Table() {}

  static List<String[]> rows(String name) {
    try (InputStream in = Table.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(line -> line.split(",", -1))
          .toList();
    } catch (IOException broken) {
      throw new UncheckedIOException(name, broken);
    }
  }
}
