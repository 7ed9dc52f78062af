package org.climbwatch.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.RecordedDeed;
import org.climbwatch.journal.RecordedEvent;
import org.climbwatch.web.EventLine;

/** What happened in a firing, events and deeds together, the oldest first. */
final class HistoryLines {
  private HistoryLines() {}

  static List<EventLine> of(Firings firings, long id) {
    List<EventLine> lines = new ArrayList<>();
    for (RecordedEvent event : firings.events(id)) {
      lines.add(
          new EventLine(
              event.at(),
              OptionalDouble.of(event.elapsedMs() / 1000.0),
              event.event(),
              event.subject(),
              event.state(),
              event.message()));
    }
    for (RecordedDeed deed : firings.deeds(id)) {
      line(deed).ifPresent(lines::add);
    }
    lines.sort(Comparator.comparing(EventLine::time));
    return lines;
  }

  private static Optional<EventLine> line(RecordedDeed deed) {
    OptionalDouble elapsedS = OptionalDouble.of(deed.elapsedMs() / 1000.0);
    return switch (deed.action()) {
      case "noted", "remarked" ->
          Optional.of(new EventLine(deed.at(), elapsedS, EventLine.NOTE, "", "", deed.text()));
      case "resumed" ->
          Optional.of(
              new EventLine(
                  deed.at(), elapsedS, EventLine.NOTE, "", "", "Climbwatch was started again."));
      default -> AlarmDesk.line(deed).map(said -> said.at(deed.at(), elapsedS));
    };
  }
}
