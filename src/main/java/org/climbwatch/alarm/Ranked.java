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

  /**
   * The gravest of them that is present and announced: it speaks for this one. One that was itself
   * taken over and is going does not.
   */
  Optional<AlarmKind> saidBy() {
    for (int i = better.length - 1; i >= 0; i--) {
      if (better[i].present() && speaks(better[i])) {
        return Optional.of(better[i].kind());
      }
    }
    return Optional.empty();
  }

  /**
   * Who has seen the graver one and puts it aside is not to be rung for less of the same cause; who
   * puts it aside beforehand still is.
   */
  private static boolean speaks(Alarm one) {
    return switch (one.state()) {
      case UNACKNOWLEDGED, ACKNOWLEDGED -> true;
      case SHELVED -> one.occurrence().orElseThrow().shelf().orElseThrow().ofSeen();
      default -> false;
    };
  }
}
