package org.climbwatch.watch;

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

  /**
   * The potter answers an alarm.
   *
   * @param alarmId which occurrence
   * @param who may be blank
   */
  record Acknowledged(Moment at, String alarmId, String who) implements Input {}

  /** The program has started again: what lies between is a gap. */
  record Resumed(Moment at) implements Input {}

  /** The settings in force from here on. */
  record Configured(Moment at, WatchSettings settings) implements Input {}
}
