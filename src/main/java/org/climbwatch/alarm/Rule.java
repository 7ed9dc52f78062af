package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.reading.Moment;

/**
 * One alarm rule: does its condition hold in this situation?
 *
 * <p>A rule keeps nothing between two looks. How long the condition has held, and all that follows,
 * is the business of the {@link Alarm}.
 */
public interface Rule {
  AlarmKind kind();

  Delays delays();

  /** Whether the settings have it look at all. */
  default boolean inService() {
    return true;
  }

  /**
   * The look.
   *
   * @param standing whether the alarm already stands, for rules with a deadband
   */
  Verdict look(Situation situation, boolean standing);

  /**
   * Whether what {@link #message} would say is so now. A standing alarm may hold without: within
   * its deadband "under 20 °C/h" would not be true.
   */
  default boolean isSo(Situation situation) {
    return look(situation, false) == Verdict.HOLDS;
  }

  /**
   * What is said when the condition has held for its on-delay: what was seen with numbers, what it
   * likely means, what to check first.
   */
  String message(Situation situation, long heldSeconds);

  /**
   * When that has happened of which {@link #message} tells, where it is the matter of one moment:
   * if it happens again while the alarm stands, it is told anew.
   */
  default Optional<Moment> happenedAt(Situation situation) {
    return Optional.empty();
  }

  /** The sentence with which it is said that the condition has gone. */
  default String gone() {
    return "No longer so.";
  }

  /** What one look gives. */
  enum Verdict {
    /** The condition holds. */
    HOLDS,
    /** The condition does not hold. */
    CLEAR,
    /** The rule cannot tell: no climb yet, or no temperature. The alarm stays as it is. */
    UNKNOWN,
    /** The rule does not apply in this phase (suppressed by design): the alarm returns. */
    NOT_APPLICABLE
  }
}
