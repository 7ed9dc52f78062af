package org.climbwatch.ensemble;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.signal.Span;
import org.climbwatch.source.simulated.EnsembleFiring;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;

/** One firing of the ensemble as the watch saw it under its default settings, and its truth. */
final class Followed {
  /** °C/h under which the true climb counts as stalled, and °C short of the target. */
  static final double STALL_C_PER_HOUR = 20;

  private static final double SHORT_OF_TARGET_C = 15;
  private static final double SETTLED_C_PER_HOUR = 5;
  private static final int LOOK_S = 20;
  private static final int CHECKED_S = 2400;

  /** What the plain rule can look at, every 20 s: climb NaN while unknown. */
  record Look(double second, boolean applies, double climbCPerHour) {}

  /** A forecast and what became of the fire as it burnt then. */
  record Check(Span levelC, Span arrivalS, double trueLevelC, double trueArrivalS) {}

  final long seed;
  final EnsembleFiring firing;
  final List<Look> looks = new ArrayList<>();
  final List<Check> checks = new ArrayList<>();
  private final EnumMap<AlarmKind, List<Stood>> stood = new EnumMap<>(AlarmKind.class);
  final List<Double> undeclaredHoldS = new ArrayList<>();
  private final Watch watch;
  private boolean held;
  private double highestC;
  private double whenLostC = Double.NaN;
  private double minuteLaterC = Double.NaN;
  long readings;
  long nanos;

  Followed(long seed) {
    this.seed = seed;
    firing = new EnsembleFiring(seed);
    watch =
        new Watch(
            new WatchSettings(
                "kiln",
                OptionalDouble.of(firing.targetC()),
                new ProbeSettings("probe", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1),
                SignalSettings.DEFAULT,
                FiringSettings.DEFAULT,
                AlarmSettings.DEFAULT));
    accept(new Input.Began(now(), "ensemble"));
    while (firing.step()) {
      second();
    }
  }

  private void second() {
    declare();
    if (Double.isNaN(whenLostC) && firing.troubleSinceS() >= 0) {
      whenLostC = firing.trueC();
    }
    if (firing.troubleSinceS() >= 0 && firing.second() == firing.troubleSinceS() + 60) {
      minuteLaterC = firing.trueC();
    }
    if (firing.holds() && !firing.holdDeclared()) {
      undeclaredHoldS.add((double) firing.second());
    }
    if (firing.second() % firing.intervalS() == 0) {
      measure();
    }
  }

  private void declare() {
    if (firing.holds() != held) {
      held = firing.holds();
      if (firing.holdDeclared()) {
        accept(new Input.Declared(now(), held ? Phase.HOLDING : Phase.CLIMBING));
      }
    }
    if (firing.gasOffDeclared()) {
      accept(new Input.Declared(now(), Phase.COOLING));
    }
  }

  private void measure() {
    Reading reading =
        firing.fault().isPresent()
            ? Reading.faulty(now(), "probe", firing.fault().get())
            : Reading.linearised(now(), "probe", firing.shownC(), OptionalDouble.of(25));
    long before = System.nanoTime();
    Outcome outcome = watch.accept(new Input.Measured(reading));
    nanos += System.nanoTime() - before;
    readings++;
    note(outcome);
    if (outcome.judged().isPresent() && outcome.judged().get().temperatureC().isPresent()) {
      highestC = Math.max(highestC, firing.trueC());
      if (firing.second() % LOOK_S == 0) {
        look(outcome);
      }
    }
  }

  private void look(Outcome outcome) {
    var judged = outcome.judged().orElseThrow();
    boolean applies =
        judged.phase() == Phase.CLIMBING && highestC < firing.targetC() - 5 && firing.trueC() > 300;
    double climb = judged.climb().map(one -> one.cPerHour()).orElse(Double.NaN);
    looks.add(new Look(firing.second(), applies, climb));
    if (applies && firing.second() % CHECKED_S == 0) {
      watch.view().forecast().known().ifPresent(this::check);
    }
  }

  private void check(Forecast.Known known) {
    double[] fate = firing.fate(SETTLED_C_PER_HOUR);
    Span never =
        new Span(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
    checks.add(new Check(known.levelC(), known.arrivalS().orElse(never), fate[0], fate[1]));
  }

  /** When an alarm stood. */
  List<Stood> stood(AlarmKind kind) {
    return stood.getOrDefault(kind, List.of());
  }

  /** When an alarm of a weak fire stood, whichever spoke: one takes over from another. */
  List<Stood> weakFire() {
    return Stream.of(AlarmKind.STALL_AHEAD, AlarmKind.CLIMB_STALLED, AlarmKind.SAGGING)
        .flatMap(kind -> stood(kind).stream())
        .sorted(Comparator.comparingDouble(Stood::fromS))
        .toList();
  }

  /** When the lost flame's stood, before the gas was off or the door opened: then a fall is one. */
  List<Stood> fallingWithGasOn() {
    double until = firing.targetS() >= 0 ? firing.targetS() : firing.gasOffS();
    return stood(AlarmKind.FALLING).stream()
        .filter(one -> until < 0 || one.fromS() < until)
        .toList();
  }

  /** Those and the graver one that takes over from them all. */
  List<Stood> weakOrLost() {
    return Stream.concat(weakFire().stream(), fallingWithGasOn().stream())
        .sorted(Comparator.comparingDouble(Stood::fromS))
        .toList();
  }

  private void accept(Input input) {
    note(watch.accept(input));
  }

  private void note(Outcome outcome) {
    for (Event event : outcome.events()) {
      if (event instanceof Event.AlarmChanged changed) {
        note(stood.computeIfAbsent(changed.kind(), any -> new ArrayList<>()), changed.alarmState());
      }
    }
  }

  private void note(List<Stood> all, AlarmState state) {
    int last = all.size() - 1;
    if (state == AlarmState.UNACKNOWLEDGED) {
      all.add(Stood.since(firing.second()));
    } else if (last >= 0 && all.get(last).isOpen()) {
      all.set(last, all.get(last).until(firing.second()));
    }
  }

  private Moment now() {
    return new Moment(0, firing.second() * 1000);
  }

  /** °C when the trouble began. */
  double whenTroubledC() {
    return whenLostC;
  }

  /** °C of the probe a minute later, without noise. */
  double minuteLaterC() {
    return minuteLaterC;
  }

  double stallS() {
    return firing.stallS(STALL_C_PER_HOUR, SHORT_OF_TARGET_C);
  }

  /** The second up to which all was well, so that every stall alarm before is a false one. */
  double healthyUntilS() {
    boolean weak = firing.kind().equals("fire_too_small") || firing.kind().equals("healthy");
    if (firing.targetS() < 0 && weak) {
      return 0;
    }
    return firing.troubleSinceS() >= 0 && !weak ? firing.troubleSinceS() : firing.second();
  }

  /** The first second at which an alarm may be meant for the stall. */
  double warningFromS() {
    return isSudden() ? firing.troubleSinceS() : stallS() - 3 * 3600;
  }

  /** Whether the stall comes of a trouble; a fire that is too small is so from its beginning. */
  boolean isSudden() {
    return firing.troubleSinceS() > 0;
  }

  boolean inUndeclaredHold(double second) {
    return undeclaredHoldS.stream().anyMatch(at -> Math.abs(at - second) < 900);
  }
}
