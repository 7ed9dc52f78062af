package org.climbwatch.alarm;

import java.util.List;
import java.util.Optional;

/** An alarm, and those of the same probe that say more of the same cause. */
final class Ranked {
  private final Alarm alarm;
  private final Alarm[] better;

  /**
   * @param better the gravest last
   */
  Ranked(Alarm alarm, List<Alarm> better) {
    this.alarm = alarm;
    this.better = better.toArray(new Alarm[0]);
  }

  Alarm alarm() {
    return alarm;
  }

  /** How many say more. */
  int below() {
    return better.length;
  }

  /** The gravest of them that is present and not put aside: it speaks for this one. */
  Optional<AlarmKind> saidBy() {
    for (int i = better.length - 1; i >= 0; i--) {
      Alarm one = better[i];
      if (one.present() && one.state() != AlarmState.SHELVED) {
        return Optional.of(one.kind());
      }
    }
    return Optional.empty();
  }
}
