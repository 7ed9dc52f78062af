package org.climbwatch.watch;

import java.time.Duration;
import org.climbwatch.alarm.Report;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/** Everything that a firing's history follows from. */
public sealed interface Input {
  Moment at();

  /** One look at a probe. */
  record Measured(Reading reading) implements Input {
    @Override
    public Moment at() {
      return reading.at();
    }
  }

  /**
   * The potter begins a firing.
   *
   * @param name what the potter calls it; may be blank
   */
  record Began(Moment at, String name) implements Input {}

  /** The potter ends the firing. */
  record Ended(Moment at) implements Input {}

  /** The potter says what the kiln is meant to do: climb, hold, or cool with the gas off. */
  record Declared(Moment at, Phase phase) implements Input {}

  /** The potter writes a note. */
  record Noted(Moment at, String text) implements Input {}

  /** What the potter does about an alarm. */
  sealed interface Answer extends Input {
    /** Which one; as for {@link Acknowledged}. */
    String alarmId();
  }

  /**
   * The potter answers an alarm.
   *
   * @param alarmId which occurrence; or the word of a kind, with a dash and the probe's name behind
   *     it for another probe than the followed one, for whichever of it stands
   * @param by may be blank
   */
  record Acknowledged(Moment at, String alarmId, Signature by) implements Answer {
    /** An answer without a note. */
    public Acknowledged(Moment at, String alarmId, String who) {
      this(at, alarmId, new Signature(who, ""));
    }
  }

  /**
   * The potter puts an alarm aside, also one that does not stand.
   *
   * @param alarmId as for {@link Acknowledged}
   */
  record Shelved(Moment at, String alarmId, Shelving shelving) implements Answer {}

  /** The potter takes an alarm off the shelf before its time. */
  record Unshelved(Moment at, String alarmId, Signature by) implements Answer {}

  /** The potter has looked after a latched alarm. */
  record Reset(Moment at, String alarmId, Signature by) implements Answer {}

  /**
   * The program has started again: what lies between is a gap.
   *
   * @param away how long the machine was off between two boots, as far as the clocks tell; in whole
   *     seconds, none within a boot
   */
  record Resumed(Moment at, Duration away) implements Input {
    public Resumed {
      if (away.getNano() != 0 || away.isNegative()) {
        throw new IllegalArgumentException("away must be whole seconds, 0 or more, was " + away);
      }
    }

    /** Started again within a boot, or nobody knows how long it was off. */
    public Resumed(Moment at) {
      this(at, Duration.ZERO);
    }
  }

  /** The program has found out something about its machine. Rules see it at the next reading. */
  record Reported(Moment at, Report report) implements Input {}

  /** The settings in force from here on. */
  record Configured(Moment at, WatchSettings settings) implements Input {}
}
