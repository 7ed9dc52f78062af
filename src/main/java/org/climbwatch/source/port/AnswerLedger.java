package org.climbwatch.source.port;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;

/**
 * What has come of asking a device, and what it is worth at a given time. The line's thread writes,
 * the sampler asks; all times are monotonic nanoseconds.
 *
 * <pre>
 *                port missing or lost: DEVICE_GONE, at once
 *   no answer:   within the silence allowed: nothing yet; then NO_ANSWER,
 *                or GARBLED when something came but not an answer
 *   bad answers: several in a row for a while: GARBLED, before the silence is over
 *   an answer:   given once, and never when older than the silence
 * </pre>
 */
public final class AnswerLedger {
  /**
   * So many unreadable answers in a row, over at least this time, are no accident any more: a burst
   * of noise from an igniter lasts less, a wrong speed lasts for ever.
   */
  static final int BAD_IN_A_ROW = 5;

  static final long BAD_FOR_NANOS = 2_000_000_000L;

  private enum Port {
    UNTRIED,
    OPEN,
    GONE
  }

  private final long silenceNanos;
  private final Map<String, Long> failures = new TreeMap<>();
  private long answers;
  private Port port = Port.UNTRIED;
  private String trouble = "";
  private Optional<Signal> unread = Optional.empty();
  // when the last answer came, or else when the port was opened or first wanted
  private long proofNanos;
  private boolean answeredSinceOpening;
  private int unreadableInARow;
  private Fault lastFailure = Fault.NO_ANSWER;

  /**
   * @param silenceNanos without an answer until that is a fault
   */
  public AnswerLedger(long silenceNanos, long nowNanos) {
    this.silenceNanos = silenceNanos;
    this.proofNanos = nowNanos;
  }

  public synchronized void opened(long nowNanos) {
    port = Port.OPEN;
    answeredSinceOpening = false;
    lastFailure = Fault.NO_ANSWER;
    startAnew(nowNanos);
  }

  /**
   * The port can't be opened or was lost.
   *
   * @param reason for people: which port, why, what to do
   */
  public synchronized void gone(String reason) {
    port = Port.GONE;
    trouble = reason;
    unread = Optional.empty();
  }

  /**
   * The device answered, be it with a fault of its own.
   *
   * @param remark for people, about this answer; blank for none
   */
  public synchronized void answered(Signal signal, String remark, long nowNanos) {
    answers++;
    answeredSinceOpening = true;
    startAnew(nowNanos);
    trouble = remark;
    unread = Optional.of(signal);
  }

  /**
   * A question went without a usable answer.
   *
   * @param word why, by which it is counted
   * @param heard whether anything came at all
   */
  public synchronized void failed(String word, boolean heard) {
    failures.merge(word, 1L, Long::sum);
    trouble = "last: " + word;
    unreadableInARow = heard ? unreadableInARow + 1 : 0;
    lastFailure = heard ? Fault.GARBLED : Fault.NO_ANSWER;
  }

  /** Something odd that cost no answer; only counted. */
  public synchronized void oddity(String word) {
    failures.merge(word, 1L, Long::sum);
  }

  private void startAnew(long nowNanos) {
    unread = Optional.empty();
    proofNanos = nowNanos;
    unreadableInARow = 0;
    trouble = "";
  }

  /** The newest signal not yet taken, or the fault that stands in its place, or nothing yet. */
  public synchronized Optional<Signal> take(long nowNanos) {
    Optional<Signal> newest = unread;
    unread = Optional.empty();
    Optional<Fault> outage = outage(nowNanos);
    return outage.isPresent() ? outage.map(Signal.Faulty::new) : newest;
  }

  private Optional<Fault> outage(long nowNanos) {
    if (port == Port.GONE) {
      return Optional.of(Fault.DEVICE_GONE);
    }
    long withoutProof = nowNanos - proofNanos;
    boolean hopeless = unreadableInARow >= BAD_IN_A_ROW && withoutProof >= BAD_FOR_NANOS;
    return withoutProof >= silenceNanos || hopeless ? Optional.of(lastFailure) : Optional.empty();
  }

  /** How the device is doing, for people. */
  public synchronized String describe(long nowNanos) {
    String state = answeredSinceOpening ? "answering" : "waiting for a first answer";
    state = outage(nowNanos).map(Fault::plainly).orElse(state);
    StringBuilder text = new StringBuilder(state);
    if (!trouble.isEmpty()) {
      text.append(" (").append(trouble).append(')');
    }
    text.append("; answers: ").append(answers).append(" good");
    failures.forEach((word, count) -> text.append(", ").append(word).append(' ').append(count));
    return text.toString();
  }
}
