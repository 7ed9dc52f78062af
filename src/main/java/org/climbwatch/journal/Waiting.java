package org.climbwatch.journal;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Collections;
import java.util.Iterator;
import java.util.Optional;

/** Inputs that are not on the disk yet, in their order. */
final class Waiting {
  /** An hour of ten readings a second: some 10 MB. */
  static final int MOST_READINGS = 36_000;

  private final ArrayDeque<Entry> entries = new ArrayDeque<>();
  private long lost;

  void add(Entry entry) {
    entries.add(entry);
    if (entries.size() > MOST_READINGS) {
      loseOldestReading();
    }
  }

  Collection<Entry> entries() {
    return Collections.unmodifiableCollection(entries);
  }

  boolean isEmpty() {
    return entries.isEmpty();
  }

  void clear() {
    entries.clear();
  }

  /** Says so when readings had to be given up; stays until the program starts again. */
  Optional<String> lost() {
    return lost == 0
        ? Optional.empty()
        : Optional.of(lost + " readings were lost because the journal could not be written");
  }

  /** Never a deed or an event: those are few. */
  private void loseOldestReading() {
    Iterator<Entry> oldestFirst = entries.iterator();
    while (oldestFirst.hasNext()) {
      Entry entry = oldestFirst.next();
      if (entry instanceof Entry.Look && entry.events().isEmpty()) {
        oldestFirst.remove();
        lost++;
        return;
      }
    }
  }
}
