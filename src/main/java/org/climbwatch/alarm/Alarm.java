package org.climbwatch.alarm;

import static org.climbwatch.alarm.AlarmState.ACKNOWLEDGED;
import static org.climbwatch.alarm.AlarmState.NORMAL;
import static org.climbwatch.alarm.AlarmState.SHELVED;
import static org.climbwatch.alarm.AlarmState.UNACKNOWLEDGED;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;

/**
 * One rule's alarm of one probe: what its {@link Presence} and the potter do to it leads through
 * the {@link LifeCycle}.
 *
 * <p>Acknowledging answers one occurrence. What holds again later is announced again.
 */
final class Alarm {
  /**
   * Something to announce.
   *
   * @param state what the occurrence is now; normal when it is closed
   * @param message what to say
   * @param reminder whether it only says again what was announced before
   */
  record Change(Occurrence occurrence, AlarmState state, String message, boolean reminder) {
    /** The change of one for which another alarm speaks now. */
    Change saidBy(AlarmKind other) {
      String says = "Now said by \"" + other.title() + "\". It was: " + occurrence.message();
      return new Change(occurrence, state, says, reminder);
    }
  }

  private final AlarmKind kind;
  private Rule rule;
  private final String probe;
  private String suffix;
  private final Presence presence = new Presence();
  private AlarmState state = NORMAL;
  private Optional<Occurrence> occurrence = Optional.empty();

  /**
   * @param followed whether the probe is the one that the firing follows; the alarms of others
   *     carry its name
   */
  Alarm(Rule rule, String probe, boolean followed) {
    kind = rule.kind();
    this.rule = rule;
    this.probe = probe;
    follow(followed);
    configure(rule);
  }

  /** Takes the name of the followed probe's alarm, or of another's; what stands keeps its id. */
  void follow(boolean followed) {
    suffix = followed ? "" : "-" + probe;
  }

  /** The probe whose readings it looks at. */
  String probe() {
    return probe;
  }

  /** How it is named whichever occurrence stands: the kind's word, and the probe where need be. */
  String called() {
    return kind().word() + suffix;
  }

  /** Whether a name means it: that of its occurrence, or that of whichever stands. */
  boolean isMeant(String idOrKind) {
    return occurrence.filter(one -> one.id().equals(idOrKind)).isPresent()
        || called().equals(idOrKind);
  }

  AlarmKind kind() {
    return kind;
  }

  AlarmState state() {
    return state;
  }

  /** The occurrence that is not yet normal. */
  Optional<Occurrence> occurrence() {
    return occurrence;
  }

  /** Whether its condition holds and has done so for its on-delay. */
  boolean present() {
    return presence.present();
  }

  /** Goes on under other settings of the same rule. */
  Optional<Change> configure(Rule other) {
    rule = other;
    if (rule.inService()) {
      return Optional.empty();
    }
    presence.end();
    return take(Turn.TAKEN_OUT);
  }

  /**
   * Looks at the situation of its probe.
   *
   * @param saidBy the alarm of the same cause that is present and says more
   */
  Optional<Change> look(Situation situation, Duration remindAfter, Optional<AlarmKind> saidBy) {
    boolean before = presence.present();
    Rule.Verdict verdict = rule.look(situation, before);
    if (saidBy.isEmpty() && staysQuiet(verdict)) {
      return Optional.empty();
    }
    presence.look(verdict, situation.at(), rule.delays());
    if (saidBy.isPresent()) {
      return giveWay(situation, verdict, saidBy.get());
    }
    Optional<Change> change = take(applying(situation, verdict));
    boolean heldBack =
        before
            && (state == NORMAL || state == AlarmState.RETURNED_UNACKNOWLEDGED)
            && verdict == Rule.Verdict.HOLDS;
    if (presence.present() && (!before || heldBack)) {
      change = raise(situation);
    } else if (before && !presence.present()) {
      occurrence = occurrence.map(Occurrence::causeGone);
      change = change.isPresent() ? change : take(Turn.GONE);
    } else if (state == SHELVED && verdict == Rule.Verdict.HOLDS) {
      refresh(situation);
    }
    return change.isPresent() ? change : remind(situation, verdict, remindAfter);
  }

  /** Ends the shelving whose time is over; as {@link #unshelve}. */
  Optional<Change> expire(Moment at, Optional<AlarmKind> saidBy) {
    return hasExpired(at) ? unshelve(at, saidBy) : Optional.empty();
  }

  /** Whether it is shelved and the time is over. */
  boolean hasExpired(Moment at) {
    return state == SHELVED && occurrence.orElseThrow().shelf().orElseThrow().isOver(at);
  }

  /** Answers the occurrence; gives it if that changed anything. */
  Optional<Change> acknowledge(Signature by) {
    if (next(Turn.ACKNOWLEDGED) != state) {
      occurrence = occurrence.map(one -> one.answered(by));
    }
    return take(Turn.ACKNOWLEDGED);
  }

  /** Puts it aside; one that is shelved already gets the new end. */
  Optional<Change> shelve(Moment at, Shelving shelving) {
    if (next(Turn.SHELVED) != SHELVED) {
      return Optional.empty();
    }
    Occurrence one = occurrence.orElseGet(() -> Occurrence.aside(id(at), at, probe, kind));
    Moment until = at.plusMillis(shelving.time().toMillis());
    Shelf shelf = new Shelf(until, one.seenBeforeShelved());
    occurrence = Optional.of(one.shelved(shelf, shelving.by()));
    Optional<Change> change = take(Turn.SHELVED);
    return change.isPresent()
        ? change
        : Optional.of(changed(occurrence.get(), state, Turn.SHELVED));
  }

  /** Takes it off the shelf; what holds is announced anew, or gives way to what says more. */
  Optional<Change> unshelve(Moment at, Optional<AlarmKind> saidBy) {
    if (state != SHELVED) {
      return Optional.empty();
    }
    occurrence = occurrence.map(one -> one.unshelved(at));
    Optional<Change> change =
        take(presence.present() ? Turn.UNSHELVED_HOLDING : Turn.UNSHELVED_GONE);
    return saidBy.isPresent()
        ? take(Turn.TAKEN_OVER).map(given -> given.saidBy(saidBy.get())).or(() -> change)
        : change;
  }

  /** Closes what was latched. */
  Optional<Change> reset() {
    return take(Turn.RESET);
  }

  /** After a gap delays start anew; what stands goes on standing. */
  void pause() {
    presence.pause();
  }

  /** The same after a restart; {@code last} is the last moment before it. */
  void resume(Moment last, Moment at, Duration away) {
    presence.pause();
    occurrence =
        occurrence.map(
            one ->
                one.shelf()
                    .map(shelf -> one.shelved(shelf.carriedOver(last, at, away), one.by()))
                    .orElse(one));
  }

  /** Whether a look changes nothing at all: so at nearly every reading, for nearly every alarm. */
  private boolean staysQuiet(Rule.Verdict verdict) {
    if (verdict == Rule.Verdict.HOLDS || !presence.absent()) {
      return false;
    }
    return verdict == Rule.Verdict.NOT_APPLICABLE
        ? state == (rule.inService() ? AlarmState.SUPPRESSED_BY_DESIGN : AlarmState.OUT_OF_SERVICE)
        : state == NORMAL;
  }

  private Optional<Change> giveWay(Situation situation, Rule.Verdict verdict, AlarmKind to) {
    if (verdict != Rule.Verdict.NOT_APPLICABLE || !rule.inService()) {
      take(applying(situation, verdict)); // in or out of service, perhaps: nothing to announce
    }
    return take(Turn.TAKEN_OVER).map(change -> change.saidBy(to));
  }

  /** What is latched waits for somebody's word; that the kiln has long fallen is none. */
  private Turn applying(Situation situation, Rule.Verdict verdict) {
    boolean coolsUnsaid = situation.phase() == Phase.COOLING && !situation.gasOffSaid();
    boolean waits = state == AlarmState.LATCHED && rule.inService() && coolsUnsaid;
    if (verdict != Rule.Verdict.NOT_APPLICABLE || waits) {
      return Turn.APPLIES;
    }
    return rule.inService() ? Turn.SUPPRESSED : Turn.TAKEN_OUT;
  }

  /** An occurrence that is not closed and is present again is still the same one. */
  private Optional<Change> raise(Situation situation) {
    Moment at = situation.at();
    String message = rule.message(situation, presence.heldSeconds(at).orElse(0));
    occurrence =
        Optional.of(
            occurrence
                .map(one -> one.again(at, message))
                .orElseGet(() -> Occurrence.begun(id(at), at, true, message)));
    return take(Turn.HOLDS);
  }

  private Optional<Change> remind(Situation situation, Rule.Verdict verdict, Duration after) {
    if (state != UNACKNOWLEDGED) {
      return Optional.empty();
    }
    Moment at = situation.at();
    if (!occurrence.orElseThrow().reminder().isDue(at, after)) {
      return Optional.empty();
    }
    boolean fresh = verdict == Rule.Verdict.HOLDS && refresh(situation);
    String says = occurrence.get().reminderWords(at, fresh);
    Occurrence reminded = occurrence.get().reminded(at);
    occurrence = Optional.of(reminded);
    return kind().priority() == Priority.LOW
        ? Optional.empty() // has the numbers of now, and is not said again
        : Optional.of(new Change(reminded, state, says, true));
  }

  /** Says it with the numbers of now where they bear it out; answers whether they do. */
  private boolean refresh(Situation situation) {
    OptionalLong held = presence.heldSeconds(situation.at());
    if (held.isEmpty() || !rule.isSo(situation)) {
      return false;
    }
    String message = rule.message(situation, held.getAsLong());
    occurrence = occurrence.map(one -> one.seen(message, situation.at()));
    return true;
  }

  private Optional<Change> take(Turn turn) {
    AlarmState from = state;
    state = next(turn);
    if (state == from || !(from.stands() || state.stands())) {
      return Optional.empty();
    }
    Occurrence one = occurrence.orElseThrow();
    if (!state.stands()) {
      occurrence = Optional.empty();
    }
    return Optional.of(changed(one, state, turn));
  }

  private static Change changed(Occurrence one, AlarmState state, Turn turn) {
    boolean wants = state == UNACKNOWLEDGED || state == ACKNOWLEDGED || state == SHELVED;
    return wants
        ? new Change(one, state, one.message(), false)
        : new Change(one, state.stands() ? state : NORMAL, one.overWords(turn), false);
  }

  private AlarmState next(Turn turn) {
    boolean raised = occurrence.map(Occurrence::raised).orElse(false);
    return LifeCycle.next(state, turn, raised && kind().latching());
  }

  private String id(Moment at) {
    return kind().word() + "-" + at.boot() + "-" + at.millis() + suffix;
  }
}
