package org.climbwatch.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Text made straight as bytes in one reused buffer: a firing has a million rows.
 *
 * <p>Digits come three at a time from a table. A division costs more than all the rest of a digit
 * as long as only the first compiler has been at work, so thousands are split off by multiplying.
 */
final class ByteText {
  private static final int FLUSH_AT = 1 << 16;

  /** Room that is always left for numbers and signs after a text of any length. */
  private static final int ROOM = 1 << 10;

  private static final byte[] TRIPLES = new byte[3000];

  static {
    for (int i = 0; i < 1000; i++) {
      TRIPLES[3 * i] = (byte) ('0' + i / 100);
      TRIPLES[3 * i + 1] = (byte) ('0' + i / 10 % 10);
      TRIPLES[3 * i + 2] = (byte) ('0' + i % 10);
    }
  }

  private final OutputStream out;
  private byte[] buffer = new byte[FLUSH_AT + 2 * ROOM];
  private int length;

  ByteText(OutputStream out) {
    this.out = out;
  }

  void put(char ascii) {
    buffer[length++] = (byte) ascii;
  }

  /** Any text; not for the hot path. */
  void put(String text) {
    put(text.getBytes(StandardCharsets.UTF_8));
  }

  void put(byte[] bytes) {
    put(bytes, bytes.length);
  }

  void put(byte[] bytes, int count) {
    if (length + count + ROOM > buffer.length) {
      buffer = Arrays.copyOf(buffer, length + count + FLUSH_AT + ROOM);
    }
    System.arraycopy(bytes, 0, buffer, length, count);
    length += count;
  }

  /** A whole number, 0 or more. */
  void putWhole(int value) {
    if (value >= 1000) {
      int thousands = thousands(value);
      putWhole(thousands);
      putTriple(value - thousands * 1000);
    } else {
      int place = 3 * value;
      if (value >= 100) {
        put((char) TRIPLES[place]);
      }
      if (value >= 10) {
        put((char) TRIPLES[place + 1]);
      }
      put((char) TRIPLES[place + 2]);
    }
  }

  /** Three digits of a number below 1000. */
  void putTriple(int value) {
    int place = 3 * value;
    buffer[length] = TRIPLES[place];
    buffer[length + 1] = TRIPLES[place + 1];
    buffer[length + 2] = TRIPLES[place + 2];
    length += 3;
  }

  /** Two digits of a number below 100. */
  void putPair(int value) {
    int place = 3 * value;
    buffer[length] = TRIPLES[place + 1];
    buffer[length + 1] = TRIPLES[place + 2];
    length += 2;
  }

  /** A number of thousandths with three places. */
  void putThousandths(int value) {
    int size = putSign(value);
    int whole = thousands(size);
    putWhole(whole);
    put('.');
    putTriple(size - whole * 1000);
  }

  /** A number of ten thousandths with four places. */
  void putTenThousandths(int value) {
    int size = putSign(value);
    int whole = size / 10_000;
    int rest = size - whole * 10_000;
    int first = thousands(rest);
    putWhole(whole);
    put('.');
    put((char) ('0' + first));
    putTriple(rest - first * 1000);
  }

  /** A number of hundredths with two places. */
  void putHundredths(int value) {
    int size = putSign(value);
    int whole = size / 100;
    putWhole(whole);
    put('.');
    putPair(size - whole * 100);
  }

  /** A number of tenths with one place. */
  void putTenths(int value) {
    int size = putSign(value);
    int whole = size / 10;
    putWhole(whole);
    put('.');
    put((char) ('0' + size - whole * 10));
  }

  /** To be called between rows. */
  void endRow() throws IOException {
    put('\r');
    put('\n');
    if (length >= FLUSH_AT) {
      pass();
    }
  }

  void flush() throws IOException {
    pass();
    out.flush();
  }

  private void pass() throws IOException {
    out.write(buffer, 0, length);
    length = 0;
  }

  /** Writes the sign, if any, and gives the size. */
  private int putSign(int value) {
    if (value >= 0) {
      return value;
    }
    put('-');
    return -value;
  }

  /** A thousandth of a number, 0 or more: exact for every positive int. */
  private static int thousands(int value) {
    return (int) ((value * 274_877_907L) >>> 38);
  }
}
