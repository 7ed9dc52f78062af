package org.climbwatch.app;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.web.EventLine;
import org.climbwatch.web.Live;

/** Tells a page's live stream what the engine has just done. */
final class LiveWords implements EngineListener {
  private final Desk desk;
  private final Consumer<Live> listener;

  LiveWords(Desk desk, Consumer<Live> listener) {
    this.desk = desk;
    this.listener = listener;
  }

  @Override
  public void measured(Outcome outcome, OptionalLong firingId) {
    outcome
        .judged()
        .ifPresent(
            judged ->
                listener.accept(
                    new Live.NewReading(
                        desk.wallTime(judged.reading().at()),
                        firingId,
                        desk.elapsedS(judged.reading().at()),
                        judged)));
    events(outcome, firingId);
  }

  @Override
  public void deed(Input input, Outcome outcome, OptionalLong firingId) {
    if (input instanceof Input.Noted noted) {
      happened(
          firingId,
          new EventLine(
              desk.wallTime(noted.at()),
              desk.elapsedS(noted.at()),
              EventLine.NOTE,
              "",
              "",
              noted.text()));
    }
    AlarmDesk.line(input)
        .ifPresent(
            said ->
                happened(firingId, said.at(desk.wallTime(input.at()), desk.elapsedS(input.at()))));
    events(outcome, firingId);
  }

  private void events(Outcome outcome, OptionalLong firingId) {
    for (Event event : outcome.events()) {
      OptionalDouble elapsedS = desk.elapsedS(event.at());
      happened(
          firingId,
          new EventLine(
              desk.wallTime(event.at()),
              elapsedS,
              event.event(),
              event.subject(),
              event.state(),
              event.message()));
    }
  }

  private void happened(OptionalLong firingId, EventLine line) {
    listener.accept(new Live.Happened(firingId, line));
  }
}
