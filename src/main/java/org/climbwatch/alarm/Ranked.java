package org.climbwatch.alarm;

import java.util.List;
import java.util.Optional;

/**
 * An alarm, and those of the same probe that say more of the same cause.
 *
 * @param better the gravest last
 */
record Ranked(Alarm alarm, List<Alarm> better) {
  Ranked {
    better = List.copyOf(better);
  }

  /** The gravest of them that is present and not put aside: it speaks for this one. */
  Optional<AlarmKind> saidBy() {
    for (int i = better.size() - 1; i >= 0; i--) {
      Alarm one = better.get(i);
      if (one.present() && one.state() != AlarmState.SHELVED) {
        return Optional.of(one.kind());
      }
    }
    return Optional.empty();
  }
}
