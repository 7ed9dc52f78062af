package org.climbwatch.source.recorded;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Reads RFC 4180 rows one by one and remembers on which line each began.
 *
 * <p>A row's cells stay in one buffer and become texts only when asked for: most never are.
 */
final class CsvRows {
  private static final int END = -1;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final Reader reader;
  private final char[] buffer = new char[1 << 15];
  private int length;
  private int next;
  private int line = 1;
  private int rowLine = 1;
  private boolean begun;

  /** The cells of the row one after the other; where each ends. */
  private char[] row = new char[256];

  private int rowLength;
  private int[] ends = new int[16];
  private int count;

  CsvRows(Reader reader) {
    this.reader = reader;
  }

  /** The line on which the row began, from 1. */
  int rowLine() {
    return rowLine;
  }

  /** Goes to the next row that is not blank; false at the end. */
  boolean next() throws IOException {
    if (!begun) {
      begun = true;
      if (peek() == BYTE_ORDER_MARK) {
        next++;
      }
    }
    while (peek() != END) {
      rowLine = line;
      count = 0;
      rowLength = 0;
      takeRow();
      if (count > 1 || !text(0).isBlank()) {
        return true;
      }
    }
    return false;
  }

  int count() {
    return count;
  }

  boolean isEmpty(int cell) {
    return cell < 0 || ends[cell] == start(cell);
  }

  /** The text of a cell; empty for the cell of a column that there is none of, -1. */
  String text(int cell) {
    return cell < 0 ? "" : new String(row, start(cell), ends[cell] - start(cell));
  }

  boolean is(int cell, String text) {
    int start = start(cell);
    boolean same = ends[cell] - start == text.length();
    for (int i = 0; same && i < text.length(); i++) {
      same = row[start + i] == text.charAt(i);
    }
    return same;
  }

  /** The number in a cell; NaN when it is none. */
  double number(int cell) {
    return DecimalText.number(row, start(cell), ends[cell]);
  }

  List<String> texts() {
    List<String> all = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      all.add(text(i));
    }
    return all;
  }

  private int start(int cell) {
    return cell == 0 ? 0 : ends[cell - 1];
  }

  private void takeRow() throws IOException {
    boolean more = true;
    while (more) {
      more = takeCell();
      if (count == ends.length) {
        ends = Arrays.copyOf(ends, 2 * count);
      }
      ends[count++] = rowLength;
    }
  }

  /** Takes a cell and what ends it; says whether another follows. */
  private boolean takeCell() throws IOException {
    boolean quoted = peek() == '"';
    if (quoted) {
      takeQuoted();
    } else {
      takePlain();
    }
    int c = take();
    if (quoted && c != END && !endsCell((char) c)) {
      throw new BadRecording("text follows the closing \" of a cell; write \" inside as \"\"");
    }
    if (c == '\r' && peek() == '\n') {
      next++;
    }
    return c == ',';
  }

  /** Takes all up to what ends the cell, in runs: most of a file is this. */
  private void takePlain() throws IOException {
    while (peek() != END) {
      int from = next;
      int to = from;
      while (to < length && !endsCell(buffer[to])) {
        to++;
      }
      room(to - from);
      System.arraycopy(buffer, from, row, rowLength, to - from);
      rowLength += to - from;
      next = to;
      if (to < length) {
        return;
      }
    }
  }

  private static boolean endsCell(char c) {
    return c <= ',' && (c == ',' || c == '\n' || c == '\r');
  }

  private void takeQuoted() throws IOException {
    take();
    while (true) {
      int c = take();
      if (c == END) {
        throw new BadRecording("a cell that begins with \" never ends with one");
      }
      if (c == '"') {
        if (peek() != '"') {
          return;
        }
        next++;
      }
      add((char) c);
    }
  }

  private void add(char c) {
    room(1);
    row[rowLength++] = c;
  }

  private void room(int more) {
    if (rowLength + more > row.length) {
      row = Arrays.copyOf(row, 2 * (rowLength + more));
    }
  }

  private int take() throws IOException {
    int c = peek();
    if (c != END) {
      next++;
      // a line ends with LF, CR or both
      if (c == '\n' || (c == '\r' && peek() != '\n')) {
        line++;
      }
    }
    return c;
  }

  private int peek() throws IOException {
    if (next == length) {
      length = Math.max(reader.read(buffer), 0);
      next = 0;
      if (length == 0) {
        return END;
      }
    }
    return buffer[next];
  }
}
