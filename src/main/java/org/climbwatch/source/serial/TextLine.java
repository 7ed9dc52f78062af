package org.climbwatch.source.serial;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.climbwatch.source.Signal;

/**
 * One line of the text format, as bytes, into what the device said or why it was not taken.
 *
 * <pre>
 *   emf_uv=41234.5 cj_c=24.31 *25:40 LF
 *   |------- body, 25 -------| |  |
 *                              |  CRC-8 of the body, two capital hex digits
 *                              bytes in the body, decimal
 * </pre>
 *
 * <p>The body runs from the first byte to the one before the space in front of the last star. The
 * check finds every single changed byte; the length finds every line from which bytes were lost,
 * which a check of eight bits alone lets pass once in 256 times.
 */
final class TextLine {
  /** Bytes in a line without its end; the longest sensible one has about 50. */
  static final int LONGEST = 80;

  private static final Pattern CLOSING = Pattern.compile("([1-9][0-9]{0,2}):([0-9A-F]{2})");

  /** What became of a line. */
  sealed interface Decoded {}

  /** The line was whole and meaningful. */
  record Accepted(Signal signal) implements Decoded {}

  /** The line was not taken. */
  record Declined(Decline why) implements Decoded {}

  private TextLine() {}

  /**
   * Reads a line.
   *
   * @param line without its LF; one CR at its end is tolerated
   */
  static Decoded decode(byte[] line) {
    int length = line.length;
    if (length > 0 && line[length - 1] == '\r') {
      length--;
    }
    if (length > LONGEST) {
      return new Declined(Decline.TOO_LONG);
    }
    for (int i = 0; i < length; i++) {
      if (line[i] < 0x20 || line[i] > 0x7E) {
        return new Declined(Decline.NOT_ASCII);
      }
    }
    return checked(line, new String(line, 0, length, StandardCharsets.US_ASCII));
  }

  private static Decoded checked(byte[] line, String text) {
    int bodyLength = text.lastIndexOf(" *");
    if (bodyLength < 0) {
      return new Declined(Decline.UNCHECKED);
    }
    Matcher closing = CLOSING.matcher(text.substring(bodyLength + 2));
    if (!closing.matches()) {
      return new Declined(Decline.UNCHECKED);
    }
    if (Integer.parseInt(closing.group(1)) != bodyLength) {
      return new Declined(Decline.LENGTH);
    }
    if (Integer.parseInt(closing.group(2), 16) != Crc8.of(line, bodyLength)) {
      return new Declined(Decline.CHECKSUM);
    }
    return Fields.decode(text.substring(0, bodyLength));
  }
}
