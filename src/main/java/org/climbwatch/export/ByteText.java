package org.climbwatch.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Text made straight as bytes in one reused buffer: a firing has a million rows. */
final class ByteText {
  private static final int FLUSH_AT = 1 << 16;

  private final OutputStream out;
  private byte[] buffer = new byte[FLUSH_AT + 1024];
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
    if (length + bytes.length > buffer.length) {
      buffer = java.util.Arrays.copyOf(buffer, length + bytes.length + FLUSH_AT);
    }
    System.arraycopy(bytes, 0, buffer, length, bytes.length);
    length += bytes.length;
  }

  /** A whole number. */
  void put(long value) {
    long rest = value;
    if (rest < 0) {
      put('-');
      rest = -rest;
    }
    int digits = 1;
    for (long power = 10; digits < 19 && rest >= power; power *= 10) {
      digits++;
    }
    digits(rest, digits);
  }

  /** A whole number of fractions of ten to the minus places, all places written. */
  void putDecimal(long value, int places, long one) {
    long rest = value;
    if (rest < 0) {
      put('-');
      rest = -rest;
    }
    put(rest / one);
    put('.');
    digits(rest % one, places);
  }

  /** Exactly so many digits, with leading zeros. */
  void digits(long value, int count) {
    long rest = value;
    for (int i = length + count - 1; i >= length; i--) {
      buffer[i] = (byte) ('0' + rest % 10);
      rest /= 10;
    }
    length += count;
  }

  /** To be called between rows. */
  void endRow() throws IOException {
    put('\r');
    put('\n');
    if (length >= FLUSH_AT) {
      flush();
    }
  }

  void flush() throws IOException {
    out.write(buffer, 0, length);
    length = 0;
    out.flush();
  }
}
