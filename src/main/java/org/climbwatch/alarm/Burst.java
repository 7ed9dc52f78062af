package org.climbwatch.alarm;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.Set;
import org.climbwatch.reading.Moment;

/**
 * Which alarm came first where several come close together, and whether they come in a flood.
 *
 * <p>An alarm comes first when no other was raised in the ten minutes before it: what follows
 * within ten minutes of each other may be its consequence. A flood is more than ten alarms in ten
 * minutes, as ANSI/ISA-18.2 has it (the figure is from memory). Both rest on the last ten minutes
 * alone, so a replay that starts in a quiet hour finds the same.
 */
final class Burst {
  static final Duration WINDOW = Duration.ofMinutes(10);
  static final int MOST_WITHOUT_FLOOD = 10;

  private final Deque<Moment> raised = new ArrayDeque<>();
  private final Set<String> first = new LinkedHashSet<>();
  private String leader = "";

  /** An alarm was raised, or came back. */
  void raised(String id, Moment at) {
    forget(at);
    if (raised.isEmpty()) {
      leader = id;
    } else if (!id.equals(leader) && !leader.isEmpty()) {
      first.add(leader);
    }
    raised.addLast(at);
    if (raised.size() > MOST_WITHOUT_FLOOD + 1) {
      raised.removeFirst();
    }
  }

  /** An occurrence is closed. */
  void closed(String id) {
    first.remove(id);
    leader = leader.equals(id) ? "" : leader;
  }

  /** Whether an occurrence came first and others followed. */
  boolean cameFirst(String id) {
    return first.contains(id);
  }

  /** Whether alarms come faster than a person can answer them. */
  boolean isFlood(Moment at) {
    forget(at);
    return raised.size() > MOST_WITHOUT_FLOOD;
  }

  private void forget(Moment at) {
    while (!raised.isEmpty() && !isNear(raised.getFirst(), at)) {
      raised.removeFirst();
    }
  }

  private static boolean isNear(Moment earlier, Moment at) {
    return earlier.sameBoot(at) && at.millisSince(earlier) <= WINDOW.toMillis();
  }
}
