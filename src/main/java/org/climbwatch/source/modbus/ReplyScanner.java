package org.climbwatch.source.modbus;

import com.digitalpetri.modbus.Crc16;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds whole answers to one kind of question in whatever arrives: noise before, between and behind
 * them, echoes, and halves of others cost nothing but themselves.
 *
 * <pre>
 *   | unit | function       | n   | n data bytes | CRC low | CRC high |
 *   | unit | function + 80h | exception code     | CRC low | CRC high |
 * </pre>
 *
 * <p>From MODBUS over Serial Line V1.02, section 2.5.1. A run of bytes counts as an answer when its
 * function fits and its check is right; noise passes that check once in 65,536 times.
 */
final class ReplyScanner {
  /** Longest frame of the standard. */
  static final int LONGEST = 256;

  private static final int EXCEPTION_BIT = 0x80;
  private static final int EXCEPTION_LENGTH = 5;
  private static final int AROUND_DATA = 5;

  /**
   * A frame whose check was right.
   *
   * @param exception 0 for none, or the exception code
   * @param registers what the registers hold, empty with an exception
   */
  record Frame(int unit, int exception, byte[] registers) {}

  private final int function;
  private byte[] held = new byte[0];

  ReplyScanner(int function) {
    this.function = function;
  }

  /** Takes the first {@code length} bytes; the frames that they complete, in order. */
  List<Frame> take(byte[] bytes, int length) {
    byte[] joined = Arrays.copyOf(held, held.length + length);
    System.arraycopy(bytes, 0, joined, held.length, length);
    List<Frame> frames = new ArrayList<>();
    int from = 0;
    for (int at = 0; at < joined.length; at++) {
      int end = at + lengthAt(joined, at);
      if (end > at && end <= joined.length && checked(joined, at, end)) {
        frames.add(frame(joined, at));
        at = end - 1;
        from = end;
      }
    }
    int keep = Math.max(from, joined.length - LONGEST);
    held = Arrays.copyOfRange(joined, keep, joined.length);
    return frames;
  }

  /** Length of the frame that would begin there, or 0 when none can or it is not known yet. */
  private int lengthAt(byte[] bytes, int at) {
    if (at + 2 >= bytes.length) {
      return 0;
    }
    int code = bytes[at + 1] & 0xFF;
    if (code == (function | EXCEPTION_BIT)) {
      return EXCEPTION_LENGTH;
    }
    return code == function ? AROUND_DATA + (bytes[at + 2] & 0xFF) : 0;
  }

  private static boolean checked(byte[] bytes, int from, int end) {
    int sent = bytes[end - 2] & 0xFF | (bytes[end - 1] & 0xFF) << 8;
    return sent == check(bytes, from, end - 2);
  }

  /** The check of some bytes, 0 to FFFF hex; its low byte is sent first. */
  static int check(byte[] bytes, int from, int end) {
    Crc16 crc = new Crc16();
    // byte by byte: given a buffer that does not begin at 0, the library reads beyond its bytes
    for (int i = from; i < end; i++) {
      crc.update(bytes[i]);
    }
    return crc.getValue();
  }

  private Frame frame(byte[] bytes, int at) {
    int unit = bytes[at] & 0xFF;
    int third = bytes[at + 2] & 0xFF;
    boolean exception = (bytes[at + 1] & 0xFF) != function;
    return exception
        ? new Frame(unit, third, new byte[0])
        : new Frame(unit, 0, Arrays.copyOfRange(bytes, at + 3, at + 3 + third));
  }
}
