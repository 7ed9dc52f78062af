package org.climbwatch.alarm;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.SignalHealth;

/** One alarm on a rule whose verdict the test sets, second by second. */
final class Bench {
  static final Signature ANN = new Signature("Ann", "");
  static final int ON_S = 10;
  static final int OFF_S = 5;
  static final Duration REMIND_AFTER = Duration.ofMinutes(5);

  /** The rule; the message tells how long it has held. */
  final class SetRule implements Rule {
    private final AlarmKind kind;

    SetRule(AlarmKind kind) {
      this.kind = kind;
    }

    @Override
    public AlarmKind kind() {
      return kind;
    }

    @Override
    public Delays delays() {
      return Delays.ofSeconds(ON_S, OFF_S);
    }

    @Override
    public Verdict look(Situation situation, boolean standing) {
      return verdict == Verdict.HOLDS && inDeadband && !standing ? Verdict.CLEAR : verdict;
    }

    @Override
    public Optional<Moment> happenedAt(Situation situation) {
      return happened;
    }

    @Override
    public String message(Situation situation, long heldSeconds) {
      return "held " + heldSeconds + " s";
    }
  }

  private final SetRule rule;
  final Alarm alarm;
  final List<AlarmChange> changes = new ArrayList<>();
  private Rule.Verdict verdict = Rule.Verdict.CLEAR;
  private boolean inDeadband;
  private Optional<AlarmKind> saidBy = Optional.empty();
  private Optional<Moment> happened = Optional.empty();
  private int second;

  /** Of an alarm that does not latch. */
  Bench() {
    this(AlarmKind.CLIMB_STALLED);
  }

  Bench(AlarmKind kind) {
    rule = new SetRule(kind);
    alarm = new Alarm(rule, "probe", true);
  }

  AlarmState state() {
    return alarm.state();
  }

  String id() {
    return alarm.occurrence().orElseThrow().id();
  }

  Moment now() {
    return at(second);
  }

  /** So many seconds of looks with one verdict. */
  Bench look(Rule.Verdict shown, int seconds) {
    verdict = shown;
    for (int s = 0; s < seconds; s++) {
      second++;
      alarm.expire(now(), saidBy).ifPresent(changes::add);
      alarm.look(situation(now()), REMIND_AFTER, saidBy).ifPresent(changes::add);
    }
    return this;
  }

  Bench hold(int seconds) {
    return look(Rule.Verdict.HOLDS, seconds);
  }

  /** It goes on holding, but would not be raised anew. */
  Bench holdInDeadband(int seconds) {
    inDeadband = true;
    look(Rule.Verdict.HOLDS, seconds);
    inDeadband = false;
    return this;
  }

  /** From now on an alarm that says more is present. */
  Bench takeOver() {
    saidBy = Optional.of(AlarmKind.FALLING);
    return look(verdict, 1);
  }

  /** It is not any more. */
  Bench giveBack() {
    saidBy = Optional.empty();
    return this;
  }

  /** What it tells of happens once more. */
  Bench happens() {
    happened = Optional.of(at(second + 1));
    return look(verdict, 1);
  }

  Bench clear(int seconds) {
    return look(Rule.Verdict.CLEAR, seconds);
  }

  Bench acknowledge() {
    alarm.acknowledge(ANN).ifPresent(changes::add);
    return this;
  }

  Bench shelve(int seconds) {
    alarm.shelve(now(), new Shelving(Duration.ofSeconds(seconds), ANN)).ifPresent(changes::add);
    return this;
  }

  Bench unshelve() {
    alarm.unshelve(now(), saidBy).ifPresent(changes::add);
    return this;
  }

  Bench reset() {
    alarm.reset().ifPresent(changes::add);
    return this;
  }

  Bench takeOut() {
    alarm.configure(new OutOfService(rule.kind(), rule.delays())).ifPresent(changes::add);
    return this;
  }

  Bench putBack() {
    alarm.configure(rule).ifPresent(changes::add);
    return this;
  }

  /** A moment that nobody saw, in which the machine has restarted. */
  Bench pause() {
    alarm.pause();
    return this;
  }

  static Situation situation(Moment at) {
    return new Situation(
        at,
        "kiln",
        "probe",
        Phase.CLIMBING,
        false,
        false,
        0,
        OptionalDouble.empty(),
        OptionalDouble.of(800),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.of(800),
        OptionalDouble.empty(),
        new Forecast.NotYet(Forecast.Reason.TOO_EARLY),
        SignalHealth.UNKNOWN,
        false,
        Meant.NOTHING,
        Machine.UNKNOWN,
        Optional.empty());
  }

  private static Moment at(int second) {
    return new Moment(0, second * 1000L);
  }
}
