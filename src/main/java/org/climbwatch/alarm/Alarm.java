package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.reading.Moment;

/**
 * The life cycle of one rule's alarm.
 *
 * <pre>
 *            holds                on-delay             acknowledge
 *   Clear ----------> Pending --------------> Raised ---------------> Answered
 *     ^  <-----------           <----------     | gone for off-delay     | gone for off-delay
 *     |     gone                  holds again   v                        v
 *     +------------------------------------- Returned                  Clear
 *                     acknowledge
 * </pre>
 *
 * <p>Acknowledging answers one occurrence. What holds again later is raised as its own.
 */
final class Alarm {
  /** One occurrence, from its raising to its return to normal. */
  record Occurrence(String id, Moment since, String message) {}

  private sealed interface Stage {
    record Clear() implements Stage {}

    record Pending(Moment since, Moment heldAt) implements Stage {}

    record Raised(Occurrence occurrence, Optional<Moment> goneSince) implements Stage {}

    record Answered(Occurrence occurrence, Optional<Moment> goneSince) implements Stage {}

    record Returned(Occurrence occurrence, Optional<Pending> again) implements Stage {}
  }

  private static final Stage CLEAR = new Stage.Clear();

  /** ms: a condition that nobody could see for so long has not been seen to hold. */
  private static final long MOST_UNSEEN_MILLIS = 45_000;

  private Rule rule;
  private final String probe;
  private final String suffix;
  private Stage stage = CLEAR;

  /**
   * @param followed whether the probe is the one that the firing follows; the alarms of others
   *     carry its name
   */
  Alarm(Rule rule, String probe, boolean followed) {
    this.rule = rule;
    this.probe = probe;
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

  AlarmKind kind() {
    return rule.kind();
  }

  /** Goes on under other settings of the same rule. */
  void configure(Rule other) {
    rule = other;
  }

  AlarmState state() {
    if (stage instanceof Stage.Raised) {
      return AlarmState.UNACKNOWLEDGED;
    }
    if (stage instanceof Stage.Answered) {
      return AlarmState.ACKNOWLEDGED;
    }
    return stage instanceof Stage.Returned ? AlarmState.RETURNED_UNACKNOWLEDGED : AlarmState.NORMAL;
  }

  /** The occurrence that is not yet normal. */
  Optional<Occurrence> occurrence() {
    if (stage instanceof Stage.Raised raised) {
      return Optional.of(raised.occurrence());
    }
    if (stage instanceof Stage.Answered answered) {
      return Optional.of(answered.occurrence());
    }
    return stage instanceof Stage.Returned returned
        ? Optional.of(returned.occurrence())
        : Optional.empty();
  }

  /** Looks at the situation; gives the occurrence whose state changed. */
  Optional<Occurrence> look(Situation situation) {
    boolean standing = stage instanceof Stage.Raised || stage instanceof Stage.Answered;
    Rule.Verdict verdict = rule.look(situation, standing);
    Optional<Occurrence> before = occurrence();
    AlarmState stateBefore = state();
    stage =
        switch (verdict) {
          case HOLDS -> whileItHolds(situation);
          case CLEAR -> whileItIsGone(situation.at(), rule.delays().off().toMillis());
          case NOT_APPLICABLE -> whileItIsGone(situation.at(), 0);
          case UNKNOWN -> whileNobodySees(situation.at());
        };
    if (state() == stateBefore) {
      return Optional.empty();
    }
    return occurrence().or(() -> before);
  }

  /** Answers the occurrence; gives it if that changed anything. */
  Optional<Occurrence> acknowledge() {
    if (stage instanceof Stage.Raised raised) {
      stage = new Stage.Answered(raised.occurrence(), raised.goneSince());
      return Optional.of(raised.occurrence());
    }
    if (stage instanceof Stage.Returned returned) {
      // what holds again already goes on towards an occurrence of its own
      stage = returned.again().<Stage>map(pending -> pending).orElse(CLEAR);
      return Optional.of(returned.occurrence());
    }
    return Optional.empty();
  }

  /** After a gap, delays start anew; what stands goes on standing. */
  void resume() {
    if (stage instanceof Stage.Pending) {
      stage = CLEAR;
    } else if (stage instanceof Stage.Raised raised) {
      stage = new Stage.Raised(raised.occurrence(), Optional.empty());
    } else if (stage instanceof Stage.Answered answered) {
      stage = new Stage.Answered(answered.occurrence(), Optional.empty());
    } else if (stage instanceof Stage.Returned returned) {
      stage = new Stage.Returned(returned.occurrence(), Optional.empty());
    }
  }

  private Stage whileItHolds(Situation situation) {
    if (stage instanceof Stage.Raised raised) {
      return raised.goneSince().isEmpty()
          ? stage
          : new Stage.Raised(raised.occurrence(), Optional.empty());
    }
    if (stage instanceof Stage.Answered answered) {
      return answered.goneSince().isEmpty()
          ? stage
          : new Stage.Answered(answered.occurrence(), Optional.empty());
    }
    Moment since = holdingSince(situation.at());
    long heldMillis = situation.at().millisSince(since);
    if (heldMillis >= rule.delays().on().toMillis()) {
      return new Stage.Raised(raise(situation, heldMillis / 1000), Optional.empty());
    }
    Stage.Pending pending = new Stage.Pending(since, situation.at());
    return stage instanceof Stage.Returned returned
        ? new Stage.Returned(returned.occurrence(), Optional.of(pending))
        : pending;
  }

  private Moment holdingSince(Moment at) {
    if (stage instanceof Stage.Pending pending) {
      return pending.since();
    }
    return stage instanceof Stage.Returned returned
        ? returned.again().map(Stage.Pending::since).orElse(at)
        : at;
  }

  /** A short look away changes nothing; after a long one the on-delay starts anew. */
  private Stage whileNobodySees(Moment at) {
    if (stage instanceof Stage.Pending pending && unseen(pending, at)) {
      return CLEAR;
    }
    return stage instanceof Stage.Returned returned
            && returned.again().isPresent()
            && unseen(returned.again().get(), at)
        ? new Stage.Returned(returned.occurrence(), Optional.empty())
        : stage;
  }

  private static boolean unseen(Stage.Pending pending, Moment at) {
    return at.millisSince(pending.heldAt()) > MOST_UNSEEN_MILLIS;
  }

  /** An occurrence that returned and holds again before anybody answered is still the same one. */
  private Occurrence raise(Situation situation, long heldSeconds) {
    String message = rule.message(situation, heldSeconds);
    if (stage instanceof Stage.Returned returned) {
      return new Occurrence(returned.occurrence().id(), returned.occurrence().since(), message);
    }
    Moment at = situation.at();
    String id = kind().word() + "-" + at.boot() + "-" + at.millis() + suffix;
    return new Occurrence(id, at, message);
  }

  private Stage whileItIsGone(Moment at, long offDelayMillis) {
    if (stage instanceof Stage.Raised raised) {
      Moment gone = raised.goneSince().orElse(at);
      return at.millisSince(gone) >= offDelayMillis
          ? new Stage.Returned(raised.occurrence(), Optional.empty())
          : new Stage.Raised(raised.occurrence(), Optional.of(gone));
    }
    if (stage instanceof Stage.Answered answered) {
      Moment gone = answered.goneSince().orElse(at);
      return at.millisSince(gone) >= offDelayMillis
          ? CLEAR
          : new Stage.Answered(answered.occurrence(), Optional.of(gone));
    }
    if (stage instanceof Stage.Returned returned) {
      return returned.again().isEmpty()
          ? stage
          : new Stage.Returned(returned.occurrence(), Optional.empty());
    }
    return CLEAR;
  }
}
