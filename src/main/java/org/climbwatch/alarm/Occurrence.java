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
        id, at, raised, message, at, Signature.NOBODY, Optional.empty(), new Reminder(at, 0));
  }

  /** The condition is present anew; whoever answered before has not answered this. */
  Occurrence again(Moment at, String says) {
    Signature still = shelf.isPresent() ? by : Signature.NOBODY;
    return new Occurrence(id, at, true, says, at, still, shelf, new Reminder(at, 0));
  }

  Occurrence answered(Signature signature) {
    return new Occurrence(id, since, raised, message, seenAt, signature, shelf, reminder);
  }

  Occurrence shelved(Shelf on, Signature signature) {
    return new Occurrence(id, since, raised, message, seenAt, signature, Optional.of(on), reminder);
  }

  /** Off the shelf and to be announced anew. */
  Occurrence unshelved(Moment at) {
    return new Occurrence(
        id,
        since,
        raised,
        message,
        seenAt,
        Signature.NOBODY,
        Optional.empty(),
        new Reminder(at, 0));
  }

  /** With the numbers of now. */
  Occurrence seen(String says, Moment at) {
    return new Occurrence(id, since, raised, says, at, by, shelf, reminder);
  }

  Occurrence reminded(Moment at) {
    return new Occurrence(id, since, raised, message, seenAt, by, shelf, reminder.again(at));
  }
}
