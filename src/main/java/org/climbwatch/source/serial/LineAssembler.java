package org.climbwatch.source.serial;

import java.util.Arrays;

/**
 * Cuts a stream of bytes into lines at LF. Whatever arrives, it holds no more than one line, and is
 * in step again after the next LF.
 */
final class LineAssembler {
  /** Takes what was cut. */
  interface Lines {
    /**
     * A line without its LF; never empty, nor a lone CR.
     *
     * @param first whether it is the first since the port was opened, so perhaps only its tail
     */
    void line(byte[] line, boolean first);

    /** More bytes than a line may have; the rest up to the next LF is dropped. */
    void tooLong();
  }

  private final Lines lines;
  // one byte more than the longest line, for the CR
  private final byte[] held = new byte[TextLine.LONGEST + 1];
  private int count;
  private boolean overlong;
  private boolean first = true;

  LineAssembler(Lines lines) {
    this.lines = lines;
  }

  /** Takes the first {@code length} bytes of the array. */
  void take(byte[] bytes, int length) {
    for (int i = 0; i < length; i++) {
      if (bytes[i] == '\n') {
        end();
      } else if (count < held.length) {
        held[count++] = bytes[i];
      } else if (!overlong) {
        overlong = true;
        lines.tooLong();
      }
    }
  }

  private void end() {
    boolean blank = count == 0 || (count == 1 && held[0] == '\r');
    if (!overlong && !blank) {
      lines.line(Arrays.copyOf(held, count), first);
    }
    count = 0;
    overlong = false;
    first = false;
  }
}
