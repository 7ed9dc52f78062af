package org.climbwatch.source.recorded;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;

/** Reads RFC 4180 rows one by one; remembers on which line each began. */
final class CsvRows {
  private final Reader reader;
  private final char[] buffer = new char[8192];
  private int length;
  private int next;
  private int line = 1;
  private int rowLine = 1;

  CsvRows(Reader reader) {
    this.reader = reader;
  }

  /** The line on which the last row began, from 1. */
  int rowLine() {
    return rowLine;
  }

  /** The cells of the next row that is not blank; empty at the end. */
  List<String> next() throws IOException {
    List<String> cells = row();
    while (cells.size() == 1 && cells.get(0).isBlank()) {
      cells = row();
    }
    return cells;
  }

  private List<String> row() throws IOException {
    List<String> cells = new ArrayList<>(12);
    rowLine = line;
    if (peek() < 0) {
      return cells;
    }
    StringBuilder cell = new StringBuilder();
    while (true) {
      int c = take();
      if (c == '"' && cell.isEmpty()) {
        quoted(cell);
      } else if (c == ',') {
        cells.add(cell.toString());
        cell.setLength(0);
      } else if (c == '\n' || c < 0) {
        cells.add(cell.toString());
        return cells;
      } else if (c != '\r' || peek() != '\n') {
        cell.append((char) c);
      }
    }
  }

  private void quoted(StringBuilder cell) throws IOException {
    while (true) {
      int c = take();
      if (c < 0) {
        throw new BadRecording("line " + rowLine, "a quoted cell is never closed with \"");
      }
      if (c != '"') {
        cell.append((char) c);
      } else if (peek() == '"') {
        cell.append((char) take());
      } else {
        return;
      }
    }
  }

  private int peek() throws IOException {
    if (next == length) {
      length = reader.read(buffer);
      next = 0;
      if (length <= 0) {
        length = 0;
        return -1;
      }
    }
    return buffer[next];
  }

  private int take() throws IOException {
    int c = peek();
    if (c >= 0) {
      next++;
      line += c == '\n' ? 1 : 0;
    }
    return c;
  }
}
