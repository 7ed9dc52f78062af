package org.climbwatch.app;

import java.util.Optional;
import java.util.function.Function;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.journal.RecordedDeed;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.View;
import org.climbwatch.web.EventLine;
import org.climbwatch.web.Refused;

/** What the potter may do about an alarm, and how the record tells of it. */
final class AlarmDesk {
  private AlarmDesk() {}

  static Function<Moment, Input> acknowledge(View view, String alarmId, Signature by) {
    requireStanding(view, alarmId);
    if (standing(view, alarmId).filter(one -> one.state() == AlarmState.SHELVED).isPresent()) {
      throw conflict("Alarm " + alarmId + " is shelved; take it off the shelf to answer it.");
    }
    return at -> new Input.Acknowledged(at, alarmId, by);
  }

  /**
   * Whether an alarm that stands has its answer already, and this one says nothing more: a note of
   * a second person does.
   */
  static boolean answered(View view, String alarmId, Signature by) {
    return standing(view, alarmId)
        .filter(alarm -> alarm.state() == AlarmState.ACKNOWLEDGED)
        .filter(alarm -> by.note().isBlank() || by.equals(alarm.by()))
        .isPresent();
  }

  static Function<Moment, Input> shelve(View view, String alarmId, Shelving shelving) {
    boolean stands = view.alarms().stream().anyMatch(alarm -> alarm.id().equals(alarmId));
    Optional<View.WatchedAlarm> watched =
        view.watched().stream().filter(alarm -> alarm.called().equals(alarmId)).findFirst();
    if (!stands && watched.isEmpty()) {
      throw noSuch("No alarm " + alarmId + " stands or is called so; name its id or its kind.");
    }
    if (watched.isPresent() && watched.get().state() == AlarmState.OUT_OF_SERVICE) {
      throw conflict(
          "Alarm " + alarmId + " is switched off in the settings; there is nothing to shelve.");
    }
    return at -> new Input.Shelved(at, alarmId, shelving);
  }

  static Function<Moment, Input> unshelve(View view, String alarmId, Signature by) {
    requireState(view, alarmId, AlarmState.SHELVED);
    return at -> new Input.Unshelved(at, alarmId, by);
  }

  static Function<Moment, Input> reset(View view, String alarmId, Signature by) {
    requireState(view, alarmId, AlarmState.LATCHED);
    return at -> new Input.Reset(at, alarmId, by);
  }

  /** The line of the history; empty for a deed that is about no alarm. */
  static Optional<EventLine.Said> line(RecordedDeed deed) {
    return switch (deed.action()) {
      case "acknowledged" ->
          said(EventLine.ACKNOWLEDGED, deed.subject(), words(Signature.ofText(deed.text())));
      case "shelved" -> shelved(deed.subject(), Shelving.ofText(deed.text()));
      case "unshelved" -> named("unshelved", deed.subject(), Signature.ofText(deed.text()));
      case "reset" -> named("reset", deed.subject(), Signature.ofText(deed.text()));
      default -> Optional.empty();
    };
  }

  /** The same of a deed that has just been done. */
  static Optional<EventLine.Said> line(Input input) {
    if (input instanceof Input.Acknowledged answer) {
      return said(EventLine.ACKNOWLEDGED, answer.alarmId(), words(answer.by()));
    } else if (input instanceof Input.Shelved shelved) {
      return shelved(shelved.alarmId(), shelved.shelving());
    } else if (input instanceof Input.Unshelved unshelved) {
      return named("unshelved", unshelved.alarmId(), unshelved.by());
    } else if (input instanceof Input.Reset reset) {
      return named("reset", reset.alarmId(), reset.by());
    }
    return Optional.empty();
  }

  private static Optional<EventLine.Said> shelved(String alarmId, Shelving shelving) {
    long seconds = shelving.time().toSeconds();
    String time = seconds % 60 == 0 ? seconds / 60 + " min" : seconds + " s";
    return said("shelved", alarmId, colon(title(alarmId) + ", for " + time, words(shelving.by())));
  }

  private static Optional<EventLine.Said> named(String action, String alarmId, Signature by) {
    return said(action, alarmId, colon(title(alarmId), words(by)));
  }

  private static Optional<EventLine.Said> said(String action, String alarmId, String text) {
    return Optional.of(new EventLine.Said(action, alarmId, text));
  }

  private static String words(Signature by) {
    return by.who().isEmpty() ? by.note() : colon(by.who(), by.note());
  }

  private static String colon(String head, String rest) {
    return rest.isEmpty() ? head : head + ": " + rest;
  }

  private static String title(String alarmId) {
    String word = alarmId.split("-", 2)[0];
    for (AlarmKind kind : AlarmKind.values()) {
      if (kind.word().equals(word)) {
        return kind.title();
      }
    }
    return alarmId;
  }

  private static void requireState(View view, String alarmId, AlarmState state) {
    requireStanding(view, alarmId);
    if (standing(view, alarmId).filter(alarm -> alarm.state() == state).isEmpty()) {
      throw conflict("Alarm " + alarmId + " is not " + state.word() + ".");
    }
  }

  private static void requireStanding(View view, String alarmId) {
    if (standing(view, alarmId).isEmpty()) {
      throw noSuch("No alarm " + alarmId + " stands; GET /api/v1/status lists them.");
    }
  }

  /** The one of an occurrence's id, or of the name by which any alarm can be shelved. */
  private static Optional<View.StandingAlarm> standing(View view, String idOrCalled) {
    return view.alarms().stream()
        .filter(
            alarm ->
                alarm.id().equals(idOrCalled)
                    || view.watched().stream()
                        .anyMatch(
                            one ->
                                one.called().equals(idOrCalled)
                                    && one.kind() == alarm.kind()
                                    && one.probe().equals(alarm.probe())))
        .findFirst();
  }

  private static Refused noSuch(String detail) {
    return new Refused(404, "No such alarm", detail);
  }

  private static Refused conflict(String detail) {
    return new Refused(409, "Not in that state", detail);
  }
}
