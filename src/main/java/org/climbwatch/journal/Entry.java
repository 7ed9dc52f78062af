package org.climbwatch.journal;

import java.util.List;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Judged;

/** One input that waits to be written, with the events that followed from it. */
sealed interface Entry {
  List<Event> events();

  /** A look at a probe. */
  record Look(Judged judged, List<Event> events) implements Entry {}

  /** What the potter or the program did. */
  record Deed(Deeds.Row row, List<Event> events) implements Entry {}
}
