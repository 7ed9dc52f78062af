package org.climbwatch.source.scpi;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.function.Consumer;
import org.climbwatch.source.port.Wire;

/** Messages out and answers in, as lines of ASCII that end with LF or CR LF. */
final class Dialogue {
  /** Longer ones are dropped; identities and error texts stay well below. */
  private static final int LONGEST = 300;

  private final Wire wire;
  private final long timeoutNanos;
  private final Consumer<String> oddities;
  private final StringBuilder held = new StringBuilder();
  private final ArrayDeque<String> lines = new ArrayDeque<>();
  private final byte[] chunk = new byte[256];
  private String sent = "";
  private boolean heard;

  /**
   * @param oddities told, in one word, what arrived besides answers
   */
  Dialogue(Wire wire, long timeoutNanos, Consumer<String> oddities) {
    this.wire = wire;
    this.timeoutNanos = timeoutNanos;
    this.oddities = oddities;
  }

  /** Waits until the line is quiet and drops what came; whether it ever was. */
  boolean hush() throws IOException {
    long began = wire.nanoTime();
    while (wire.receive(chunk) > 0) {
      oddities.accept("unasked");
      if (wire.nanoTime() - began > timeoutNanos) {
        return false;
      }
    }
    held.setLength(0);
    lines.clear();
    return true;
  }

  /** Sends one message. */
  void send(String message) throws IOException {
    heard = false;
    sent = message;
    wire.send((message + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  /** Whether anything but an echo came since the last message was sent. */
  boolean heard() {
    return heard;
  }

  /** Sends a query; its answer, or empty when none is whole in time. */
  Optional<String> ask(String query) throws IOException {
    send(query);
    return answer(wire.nanoTime() + timeoutNanos);
  }

  /** The next line that is not an echo of what was sent, or empty once the time is over. */
  Optional<String> answer(long deadlineNanos) throws IOException {
    while (true) {
      while (!lines.isEmpty()) {
        String line = lines.poll();
        if (line.strip().equals(sent)) {
          oddities.accept("echo");
        } else if (!line.isBlank()) {
          heard = true;
          return Optional.of(line);
        }
      }
      if (wire.nanoTime() - deadlineNanos >= 0) {
        heard |= held.length() > 0;
        return Optional.empty();
      }
      take(wire.receive(chunk));
    }
  }

  long deadlineNanos() {
    return wire.nanoTime() + timeoutNanos;
  }

  private void take(int count) {
    for (int i = 0; i < count; i++) {
      char c = (char) (chunk[i] & 0xFF);
      if (c == '\n') {
        lines.add(held.toString());
        held.setLength(0);
      } else if (held.length() < LONGEST) {
        held.append(c);
      } else {
        // the rest of a line that is cut is no answer: a mark that no number holds
        held.setCharAt(LONGEST - 1, '~');
      }
    }
  }
}
