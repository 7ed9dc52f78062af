package org.climbwatch.watch;

import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;

/** Something that happened and was announced. Never rewritten. */
public sealed interface Event {
  Moment at();

  /**
   * The first column of a replay: {@code firing}, {@code phase}, {@code alarm} or {@code reminder}.
   */
  String event();

  /** What it is about: the firing's name, the phase, or the alarm kind's word. */
  String subject();

  /** What it is now. */
  String state();

  /** A sentence for people. */
  String message();

  /**
   * A firing began.
   *
   * @param at when that was known
   * @param since the reading it is dated back to, or {@code at} itself
   * @param probe the one that the firing follows
   * @param byItself the kiln warmed, as against the potter's word
   */
  record FiringBegan(
      Moment at, Moment since, String name, String probe, boolean byItself, String message)
      implements Event {
    @Override
    public String event() {
      return "firing";
    }

    @Override
    public String subject() {
      return name;
    }

    @Override
    public String state() {
      return "began";
    }
  }

  /** The firing ended. */
  record FiringEnded(Moment at, String name, boolean byItself, String message) implements Event {
    @Override
    public String event() {
      return "firing";
    }

    @Override
    public String subject() {
      return name;
    }

    @Override
    public String state() {
      return "ended";
    }
  }

  /** The phase changed. */
  record PhaseChanged(Moment at, Phase phase, String message) implements Event {
    @Override
    public String event() {
      return "phase";
    }

    @Override
    public String subject() {
      return phase.word();
    }

    @Override
    public String state() {
      return "entered";
    }
  }

  /**
   * An alarm changed its state.
   *
   * @param id the occurrence, the same from its raising to its return to normal
   * @param probe the one whose readings raised it
   * @param message of the raising: what was seen, what it likely means, what to check first
   */
  record AlarmChanged(
      Moment at, String id, String probe, AlarmKind kind, AlarmState alarmState, String message)
      implements Event {
    @Override
    public String event() {
      return "alarm";
    }

    @Override
    public String subject() {
      return kind.word();
    }

    @Override
    public String state() {
      return alarmState.word();
    }
  }

  /**
   * An alarm has stayed unanswered and is said again. Its state is as it was.
   *
   * @param id as it was announced
   */
  record AlarmReminded(Moment at, String id, String probe, AlarmKind kind, String message)
      implements Event {
    @Override
    public String event() {
      return "reminder";
    }

    @Override
    public String subject() {
      return kind.word();
    }

    @Override
    public String state() {
      return AlarmState.UNACKNOWLEDGED.word();
    }
  }
}
