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
  Optional<AlarmChange> configure(Rule other) {
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
  Optional<AlarmChange> look(
      Situation situation, Duration remindAfter, Optional<AlarmKind> saidBy) {
    boolean before = presence.present();
    Rule.Verdict verdict = rule.look(situation, before);
    if (saidBy.isEmpty() && staysQuiet(verdict)) {
      return Optional.empty();
    }
    presence.look(verdict, situation.at(), rule.delays());
    if (saidBy.isPresent()) {
      return giveWay(situation, verdict, saidBy.get());
    }
    Optional<AlarmChange> change = take(applying(situation, verdict));
    boolean heldBack =
        before
            && (state == NORMAL || state == AlarmState.RETURNED_UNACKNOWLEDGED)
            && verdict == Rule.Verdict.HOLDS;
    if (presence.present() && (!before || heldBack)) {
      change = raise(situation, Turn.HOLDS);
    } else if (before && presence.present() && happenedAnew(situation)) {
      change = raise(situation, Turn.ANEW).or(() -> Optional.of(change(Turn.ANEW)));
    } else if (before && !presence.present()) {
      occurrence = occurrence.map(Occurrence::causeGone);
      change = change.isPresent() ? change : take(Turn.GONE);
    } else if (state == SHELVED && verdict == Rule.Verdict.HOLDS) {
      refresh(situation);
    }
    return change.isPresent() ? change : remind(situation, verdict, remindAfter);
  }

  /** Ends the shelving whose time is over; as {@link #unshelve}. */
  Optional<AlarmChange> expire(Moment at, Optional<AlarmKind> saidBy) {
    return hasExpired(at) ? unshelve(at, saidBy) : Optional.empty();
  }

  /** Whether it is shelved and the time is over. */
  boolean hasExpired(Moment at) {
    return state == SHELVED && occurrence.orElseThrow().shelf().orElseThrow().isOver(at);
  }

  /** Answers the occurrence; gives it if that changed anything. */
  Optional<AlarmChange> acknowledge(Signature by) {
    if (next(Turn.ACKNOWLEDGED) != state) {
      occurrence = occurrence.map(one -> one.answered(by));
    }
    return take(Turn.ACKNOWLEDGED);
  }

  /** Puts it aside; one that is shelved already gets the new end. */
  Optional<AlarmChange> shelve(Moment at, Shelving shelving) {
    if (next(Turn.SHELVED) != SHELVED) {
      return Optional.empty();
    }
    Occurrence one = occurrence.orElseGet(() -> Occurrence.aside(id(at), at, probe, kind));
    Moment until = at.plusMillis(shelving.time().toMillis());
    Shelf shelf = new Shelf(until, one.seenBeforeShelved());
    occurrence = Optional.of(one.shelved(shelf, shelving.by()));
    Optional<AlarmChange> change = take(Turn.SHELVED);
    return change.isPresent() ? change : Optional.of(change(Turn.SHELVED));
  }

  /** Takes it off the shelf; what holds is announced anew, or gives way to what says more. */
  Optional<AlarmChange> unshelve(Moment at, Optional<AlarmKind> saidBy) {
    if (state != SHELVED) {
      return Optional.empty();
    }
    occurrence = occurrence.map(one -> one.unshelved(at));
    Optional<AlarmChange> change =
        take(presence.present() ? Turn.UNSHELVED_HOLDING : Turn.UNSHELVED_GONE);
    return saidBy.isPresent()
        ? take(Turn.TAKEN_OVER).map(given -> given.saidBy(saidBy.get())).or(() -> change)
        : change;
  }

  /** Closes what was latched. */
  Optional<AlarmChange> reset() {
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

  private Optional<AlarmChange> giveWay(Situation situation, Rule.Verdict verdict, AlarmKind to) {
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
  private Optional<AlarmChange> raise(Situation situation, Turn turn) {
    Moment at = situation.at();
    String message = rule.message(situation, presence.heldSeconds(at).orElse(0));
    occurrence =
        Optional.of(
            occurrence
                .map(one -> one.again(at, message))
                .orElseGet(() -> Occurrence.begun(id(at), at, true, message)));
    return take(turn);
  }

  /** What has happened since it was told is told anew, whoever answered what was before. */
  private boolean happenedAnew(Situation situation) {
    boolean told = state == UNACKNOWLEDGED || state == ACKNOWLEDGED;
    return told
        && rule.happenedAt(situation).filter(occurrence.orElseThrow()::isOlderThan).isPresent();
  }

  private Optional<AlarmChange> remind(Situation situation, Rule.Verdict verdict, Duration after) {
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
        : Optional.of(new AlarmChange(reminded, state, says, true));
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

  private Optional<AlarmChange> take(Turn turn) {
    AlarmState from = state;
    state = next(turn);
    if (state == from || !(from.stands() || state.stands())) {
      return Optional.empty();
    }
    Occurrence one = occurrence.orElseThrow();
    if (!state.stands()) {
      occurrence = Optional.empty();
    }
    return Optional.of(AlarmChange.by(turn, one, state, rule.gone()));
  }

  private AlarmChange change(Turn turn) {
    return AlarmChange.by(turn, occurrence.orElseThrow(), state, rule.gone());
  }

  private AlarmState next(Turn turn) {
    boolean raised = occurrence.map(Occurrence::raised).orElse(false);
    return LifeCycle.next(state, turn, raised && kind().latching());
  }

  private String id(Moment at) {
    return kind().word() + "-" + at.boot() + "-" + at.millis() + suffix;
  }
}
