package org.climbwatch.alarm;

/** What can happen to an alarm. The order is that of the columns in {@link LifeCycle}. */
enum Turn {
  /** The condition has held for its on-delay. */
  HOLDS,
  /** The condition has been gone for its off-delay. */
  GONE,
  /** The rule does not apply in this phase. */
  SUPPRESSED,
  /** An alarm of the same cause that says more is present. */
  TAKEN_OVER,
  /** The settings have switched the rule off. */
  TAKEN_OUT,
  /** The rule is in service and applies. */
  APPLIES,
  /** The potter answers. */
  ACKNOWLEDGED,
  /** The potter puts it aside for a time. */
  SHELVED,
  /** That time is over, or the potter ends it, and the condition holds. */
  UNSHELVED_HOLDING,
  /** That time is over, or the potter ends it, and the condition does not hold. */
  UNSHELVED_GONE,
  /** The potter has looked after what was latched. */
  RESET,
  /** What it tells of has happened once more while it stands. */
  ANEW
}
