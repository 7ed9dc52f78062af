package org.climbwatch.app;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/** The newest trials, so that a result is still there when the next trial has begun. */
final class KeptTrials {
  private static final int MOST = 8;

  /** Alarms of all that is kept: about 1 kB each, of the 48 MB that a lean daemon has. */
  private static final int MOST_ALARMS = 2000;

  private final Deque<TrialWork> newestFirst = new ArrayDeque<>();

  /** Keeps one more; the one before it stays in any case. */
  void add(TrialWork work) {
    while (newestFirst.size() > 1 && (newestFirst.size() >= MOST || alarms() > MOST_ALARMS)) {
      newestFirst.removeLast();
    }
    newestFirst.addFirst(work);
  }

  Optional<TrialWork> newest() {
    return Optional.ofNullable(newestFirst.peekFirst());
  }

  Optional<TrialWork> one(long id) {
    return newestFirst.stream().filter(work -> work.id() == id).findFirst();
  }

  /** All of them, the newest first. */
  List<TrialWork> all() {
    return List.copyOf(newestFirst);
  }

  private int alarms() {
    return newestFirst.stream().mapToInt(TrialWork::alarms).sum();
  }
}
