package org.climbwatch.source.serial;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;

/**
 * What has come of a serial line, and what it is worth at a given time. The reader writes, the
 * sampler asks; all times are monotonic nanoseconds.
 *
 * <pre>
 *                    port missing or lost: DEVICE_GONE, at once
 *   open, no line:   within the silence allowed: nothing yet; then
 *                    bytes came: GARBLED      no byte came: NO_ANSWER
 *   open, bad lines: several in a row for a while: GARBLED, before the silence is over
 * </pre>
 */
final class LineLedger {
  /**
   * So many bad lines in a row, over at least this time, are no accident any more: a burst of noise
   * from an igniter lasts less, a wrong speed lasts for ever.
   */
  static final int BAD_LINES_IN_A_ROW = 5;

  static final long BAD_FOR_NANOS = 2_000_000_000L;

  /** More than come in the longest interval; the oldest go first while nobody asks. */
  static final int MOST_UNREAD = 4096;

  private enum Port {
    UNTRIED,
    OPEN,
    GONE
  }

  private final long silenceNanos;
  private final int mostUnread;
  private final Map<Decline, Long> declined = new EnumMap<>(Decline.class);
  private long good;
  private Port port = Port.UNTRIED;
  private String trouble = "";
  private final Deque<Signal> unread = new ArrayDeque<>();
  private boolean heardSinceOpening;
  private long bytesSinceProof;
  private long lastByteNanos;
  // when the last good line came, or else when the port was opened or first wanted
  private long proofNanos;
  private int badInARow;

  /**
   * @param mostUnread how many signals are kept for the next asking, the newest ones
   */
  LineLedger(long silenceNanos, int mostUnread, long nowNanos) {
    this.silenceNanos = silenceNanos;
    this.mostUnread = mostUnread;
    this.proofNanos = nowNanos;
  }

  synchronized void opened(long nowNanos) {
    port = Port.OPEN;
    trouble = "";
    heardSinceOpening = false;
    unread.clear();
    startAnew(nowNanos);
  }

  /**
   * The port can't be opened or was lost.
   *
   * @param reason for people: which port, why, what to do
   */
  synchronized void gone(String reason) {
    port = Port.GONE;
    trouble = reason;
    unread.clear();
  }

  synchronized void bytes(int count, long nowNanos) {
    bytesSinceProof += count;
    lastByteNanos = nowNanos;
  }

  synchronized void accepted(Signal signal, long nowNanos) {
    good++;
    heardSinceOpening = true;
    startAnew(nowNanos);
    if (unread.size() == mostUnread) {
      unread.removeFirst();
    }
    unread.addLast(signal);
  }

  synchronized void declined(Decline why) {
    declined.merge(why, 1L, Long::sum);
    badInARow++;
  }

  private void startAnew(long nowNanos) {
    proofNanos = nowNanos;
    bytesSinceProof = 0;
    badInARow = 0;
  }

  /** The signals not yet taken, or the fault that stands in their place, or nothing yet. */
  synchronized List<Signal> take(long nowNanos) {
    if (unread.isEmpty()) {
      return outage(nowNanos).<Signal>map(Signal.Faulty::new).stream().toList();
    }
    List<Signal> taken = List.copyOf(unread);
    unread.clear();
    return taken;
  }

  private Optional<Fault> outage(long nowNanos) {
    if (port == Port.GONE) {
      return Optional.of(Fault.DEVICE_GONE);
    }
    long withoutProof = nowNanos - proofNanos;
    boolean hopeless = badInARow >= BAD_LINES_IN_A_ROW && withoutProof >= BAD_FOR_NANOS;
    if (withoutProof < silenceNanos && !hopeless) {
      return Optional.empty();
    }
    // fewer bytes than a line has may be the head of a good one
    boolean unreadable = badInARow > 0 || bytesSinceProof > TextLine.LONGEST + 2;
    boolean talking = unreadable && nowNanos - lastByteNanos < silenceNanos;
    return Optional.of(talking ? Fault.GARBLED : Fault.NO_ANSWER);
  }

  /** How the line is doing, for people. */
  synchronized String describe(long nowNanos) {
    Optional<Fault> outage = outage(nowNanos);
    String state = heardSinceOpening ? "reading" : "waiting for a first line";
    if (outage.isPresent()) {
      state = outage.get().plainly() + (trouble.isEmpty() ? "" : " (" + trouble + ")");
    }
    return state + "; " + counts();
  }

  private String counts() {
    StringBuilder text = new StringBuilder("lines: ").append(good).append(" good");
    String separator = ", declined: ";
    for (Map.Entry<Decline, Long> entry : declined.entrySet()) {
      text.append(separator).append(entry.getKey().word()).append(' ').append(entry.getValue());
      separator = ", ";
    }
    return text.toString();
  }
}
