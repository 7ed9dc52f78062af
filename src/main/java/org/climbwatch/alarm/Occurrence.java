package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.reading.Moment;

/**
 * One occurrence of an alarm, from its raising or shelving to its return to normal.
 *
 * @param raised whether the condition has been present; not so where it was shelved beforehand
 * @param message what was seen last, what it likely means, what to check first
 * @param by who has answered or shelved it
 * @param shelf while it is shelved
 */
record Occurrence(
    String id,
    Moment since,
    boolean raised,
    String message,
    Signature by,
    Optional<Shelf> shelf,
    Reminder reminder) {

  /** One that has just begun. */
  static Occurrence begun(String id, Moment at, boolean raised, String message) {
    return new Occurrence(
        id, at, raised, message, Signature.NOBODY, Optional.empty(), new Reminder(at, 0));
  }

  /** The condition is present anew; whoever answered before has not answered this. */
  Occurrence again(Moment at, String says) {
    Signature still = shelf.isPresent() ? by : Signature.NOBODY;
    return new Occurrence(id, since, true, says, still, shelf, new Reminder(at, 0));
  }

  Occurrence answered(Signature signature) {
    return new Occurrence(id, since, raised, message, signature, shelf, reminder);
  }

  Occurrence shelved(Shelf on, Signature signature) {
    return new Occurrence(id, since, raised, message, signature, Optional.of(on), reminder);
  }

  /** Off the shelf and to be announced anew. */
  Occurrence unshelved(Moment at) {
    return new Occurrence(
        id, since, raised, message, Signature.NOBODY, Optional.empty(), new Reminder(at, 0));
  }

  Occurrence saying(String says) {
    return new Occurrence(id, since, raised, says, by, shelf, reminder);
  }

  Occurrence reminded(Moment at) {
    return new Occurrence(id, since, raised, message, by, shelf, reminder.again(at));
  }
}
