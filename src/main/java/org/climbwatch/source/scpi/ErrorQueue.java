package org.climbwatch.source.scpi;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads an instrument's error queue out, and keeps what it said.
 *
 * <p>Doing so also puts question and answer in step again: answers keep their order, and an entry
 * of the queue looks like no measurement, so all that comes before it belongs to earlier questions.
 */
final class ErrorQueue {
  private static final Logger LOG = LoggerFactory.getLogger(ErrorQueue.class);
  private static final String QUERY = "SYST:ERR?";
  private static final int MOST_AT_ONCE = 20;
  private static final int SHOWN = 3;

  private final String device;
  private final ArrayDeque<String> newest = new ArrayDeque<>();
  private long count;

  /**
   * @param device for the log
   */
  ErrorQueue(String device) {
    this.device = device;
  }

  /**
   * Empties the queue.
   *
   * @return whether it could be read, so that the next answer belongs to the next question
   */
  boolean read(Dialogue dialogue, Consumer<String> oddities) throws IOException {
    for (int i = 0; i < MOST_AT_ONCE; i++) {
      dialogue.send(QUERY);
      Optional<ErrorEntry> entry = next(dialogue, oddities);
      if (entry.isEmpty()) {
        return false;
      }
      if (entry.get().isNone()) {
        return true;
      }
      add(entry.get().toString());
    }
    return true;
  }

  private static Optional<ErrorEntry> next(Dialogue dialogue, Consumer<String> oddities)
      throws IOException {
    long deadline = dialogue.deadlineNanos();
    Optional<String> line = dialogue.answer(deadline);
    while (line.isPresent()) {
      Optional<ErrorEntry> entry = ErrorEntry.of(line.get());
      if (entry.isPresent()) {
        return entry;
      }
      oddities.accept("late");
      line = dialogue.answer(deadline);
    }
    return Optional.empty();
  }

  private synchronized void add(String entry) {
    count++;
    if (!newest.contains(entry)) {
      LOG.warn("{} reports error {}", device, entry);
    }
    newest.remove(entry);
    newest.addLast(entry);
    if (newest.size() > SHOWN) {
      newest.removeFirst();
    }
  }

  /** For people: how many there were and the newest ones, or blank for none. */
  synchronized String describe() {
    return count == 0
        ? ""
        : "; instrument errors: " + count + ", last " + String.join(", ", newest);
  }
}
