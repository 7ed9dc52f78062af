package org.climbwatch.journal;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/** Inputs that are not on the disk yet, in their order. */
final class Waiting {
  /** An hour of ten readings a second: some 10 MB. */
  static final int MOST_READINGS = 36_000;

  private final ArrayDeque<Entry> entries = new ArrayDeque<>();
  private List<Entry> handed = List.of();
  private long lost;

  void add(Entry entry) {
    entries.add(entry);
    if (size() > MOST_READINGS) {
      loseOldestReading();
    }
  }

  /** Hands all out to be written; one hand-out at a time. */
  Collection<Entry> hand() {
    handed = List.copyOf(entries);
    entries.clear();
    return handed;
  }

  /** What was handed out is on the disk. */
  void written() {
    handed = List.of();
  }

  /** What was handed out is not: it waits again, in its place. */
  void takeBack() {
    for (int i = handed.size() - 1; i >= 0; i--) {
      entries.addFirst(handed.get(i));
    }
    handed = List.of();
    while (entries.size() > MOST_READINGS && loseOldestReading()) {}
  }

  /** All that is not on the disk, what was handed out among it. */
  int size() {
    return entries.size() + handed.size();
  }

  boolean isEmpty() {
    return entries.isEmpty();
  }

  /** Says so when readings had to be given up; stays until the program starts again. */
  Optional<String> lost() {
    return lost == 0
        ? Optional.empty()
        : Optional.of(lost + " readings were lost because the journal could not be written");
  }

  /** Never a deed or an event: those are few. */
  private boolean loseOldestReading() {
    Iterator<Entry> oldestFirst = entries.iterator();
    while (oldestFirst.hasNext()) {
      Entry entry = oldestFirst.next();
      if (entry instanceof Entry.Look && entry.events().isEmpty()) {
        oldestFirst.remove();
        lost++;
        return true;
      }
    }
    return false;
  }
}
