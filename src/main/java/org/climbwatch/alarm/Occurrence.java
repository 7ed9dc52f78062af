package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.reading.Moment;

/**
 * One occurrence of an alarm, from its raising or shelving to its return to normal.
 *
 * @param since when it was raised last, or shelved where it was not raised
 * @param raised whether the condition has been present; not so where it was shelved beforehand
 * @param message what was seen last, what it likely means, what to check first
 * @param seenAt when what the message says was seen
 * @param by who has answered or shelved it
 * @param shelf while it is shelved
 */
record Occurrence(
    String id,
    Moment since,
    boolean raised,
    String message,
    Moment seenAt,
    Signature by,
    Optional<Shelf> shelf,
    Reminder reminder) {

  /** One that has just begun. */
  static Occurrence begun(String id, Moment at, boolean raised, String message) {
    return new Occurrence(
        id, at, raised, message, at, Signature.NOBODY, Optional.empty(), Reminder.from(at));
  }

  /** One that is put aside before it was raised. */
  static Occurrence aside(String id, Moment at, String probe, AlarmKind kind) {
    String words = "Probe %s: \"%s\" was shelved before it was raised.";
    return begun(id, at, false, String.format(words, probe, kind.title()));
  }

  /** The condition is present anew; whoever answered before has not answered this. */
  Occurrence again(Moment at, String says) {
    Signature still = shelf.isPresent() ? by : Signature.NOBODY;
    return new Occurrence(id, at, true, says, at, still, shelf, Reminder.from(at));
  }

  Occurrence answered(Signature signature) {
    return new Occurrence(id, since, raised, message, seenAt, signature, shelf, reminder);
  }

  /** Put aside by somebody; a note that stands is not wiped by one that is not written. */
  Occurrence shelved(Shelf on, Signature signature) {
    String note = signature.note().isEmpty() ? by.note() : signature.note();
    Signature both = new Signature(signature.who(), note);
    return new Occurrence(id, since, raised, message, seenAt, both, Optional.of(on), reminder);
  }

  /** What it was put aside for is over: what comes now nobody has seen. */
  Occurrence causeGone() {
    Optional<Shelf> unseen = shelf.map(one -> new Shelf(one.until(), false));
    return new Occurrence(id, since, raised, message, seenAt, by, unseen, reminder);
  }

  /** Whether it stood before anybody put it aside. */
  boolean seenBeforeShelved() {
    return shelf.map(Shelf::ofSeen).orElse(raised);
  }

  /** Off the shelf and to be announced anew. */
  Occurrence unshelved(Moment at) {
    return new Occurrence(
        id, since, raised, message, seenAt, Signature.NOBODY, Optional.empty(), Reminder.from(at));
  }

  /** Whether something has happened since that was seen of which the message tells. */
  boolean isOlderThan(Moment news) {
    return !news.sameBoot(seenAt) || news.millisSince(seenAt) > 0;
  }

  /** With the numbers of now. */
  Occurrence seen(String says, Moment at) {
    return new Occurrence(id, since, raised, says, at, by, shelf, reminder);
  }

  /** What a reminder of it says: how long it has waited, and when it was seen if not now. */
  String reminderWords(Moment at, boolean seenNow) {
    String when = seenNow ? "" : seenBefore(at);
    return "Still not acknowledged" + reminder.waited(at) + ". " + when + message;
  }

  /**
   * What is said once it is over, by the turn that ended it.
   *
   * @param gone how the rule begins to say that what it saw has gone
   */
  String overWords(Turn by, String gone) {
    if (!raised) {
      return "Off the shelf, and never raised while it was there.";
    }
    boolean unseen = by == Turn.SUPPRESSED || by == Turn.TAKEN_OUT;
    return (unseen ? "No longer looked at." : gone) + " It was: " + message;
  }

  private String seenBefore(Moment at) {
    return seenAt.sameBoot(at)
        ? "Seen " + Words.span(at.millisSince(seenAt) / 1000) + " ago: "
        : "Seen before the restart: ";
  }

  Occurrence reminded(Moment at) {
    return new Occurrence(id, since, raised, message, seenAt, by, shelf, reminder.again(at));
  }
}
