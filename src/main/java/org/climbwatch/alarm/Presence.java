package org.climbwatch.alarm;

import java.util.Optional;
import java.util.OptionalLong;
import org.climbwatch.reading.Moment;

/**
 * Whether a rule's condition is present: from when it has held for the on-delay until it has been
 * gone for the off-delay.
 */
final class Presence {
  private sealed interface Stage {
    record Absent() implements Stage {}

    record Pending(Moment since, Moment heldAt) implements Stage {}

    record Present(Moment since, Optional<Moment> goneSince) implements Stage {}
  }

  private static final Stage ABSENT = new Stage.Absent();

  /** ms: a condition that nobody could see for so long has not been seen to hold. */
  private static final long MOST_UNSEEN_MILLIS = 45_000;

  private Stage stage = ABSENT;

  boolean present() {
    return stage instanceof Stage.Present;
  }

  /** Whether nothing has been seen to hold, not even within the on-delay. */
  boolean absent() {
    return stage == ABSENT;
  }

  /** s since it began to hold; empty when it is not present, or no duration is known. */
  OptionalLong heldSeconds(Moment at) {
    return stage instanceof Stage.Present present && present.since().sameBoot(at)
        ? OptionalLong.of(at.millisSince(present.since()) / 1000)
        : OptionalLong.empty();
  }

  void look(Rule.Verdict verdict, Moment at, Delays delays) {
    stage =
        switch (verdict) {
          case HOLDS -> whileItHolds(at, delays.on().toMillis());
          case CLEAR -> whileItIsGone(at, delays.off().toMillis());
          case NOT_APPLICABLE -> ABSENT;
          case UNKNOWN -> whileNobodySees(at);
        };
  }

  /** Nobody looks any more. */
  void end() {
    stage = ABSENT;
  }

  /** After a gap, delays start anew; what is present stays so. */
  void pause() {
    if (stage instanceof Stage.Pending) {
      stage = ABSENT;
    } else if (stage instanceof Stage.Present present) {
      stage = new Stage.Present(present.since(), Optional.empty());
    }
  }

  private Stage whileItHolds(Moment at, long onDelayMillis) {
    if (stage instanceof Stage.Present present) {
      return present.goneSince().isEmpty()
          ? stage
          : new Stage.Present(present.since(), Optional.empty());
    }
    Moment since = stage instanceof Stage.Pending pending ? pending.since() : at;
    return at.millisSince(since) >= onDelayMillis
        ? new Stage.Present(since, Optional.empty())
        : new Stage.Pending(since, at);
  }

  private Stage whileItIsGone(Moment at, long offDelayMillis) {
    if (stage instanceof Stage.Present present) {
      Moment gone = present.goneSince().orElse(at);
      return at.millisSince(gone) >= offDelayMillis
          ? ABSENT
          : new Stage.Present(present.since(), Optional.of(gone));
    }
    return ABSENT;
  }

  /** A short look away changes nothing; after a long one the on-delay starts anew. */
  private Stage whileNobodySees(Moment at) {
    return stage instanceof Stage.Pending pending
            && at.millisSince(pending.heldAt()) > MOST_UNSEEN_MILLIS
        ? ABSENT
        : stage;
  }
}
