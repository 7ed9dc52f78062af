package org.climbwatch.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.Annunciator;
import org.climbwatch.alarm.Machine;
import org.climbwatch.alarm.Meant;
import org.climbwatch.alarm.Neighbour;
import org.climbwatch.alarm.Report;
import org.climbwatch.alarm.Situation;
import org.climbwatch.firing.Course;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/**
 * The state machine of one kiln: readings and the potter's deeds in, events out.
 *
 * <p>While no firing is on, readings that are not kept change nothing but what {@link #view} shows,
 * so the kept ones alone lead to the same state.
 */
public final class Watch {
  private WatchSettings settings;
  private List<ProbeWatch> probes = new ArrayList<>();
  private final Course course;
  private final Annunciator annunciator;
  private final Outlook outlook = new Outlook();
  private Machine machine = Machine.UNKNOWN;

  public Watch(WatchSettings settings) {
    this.settings = settings;
    for (ProbeSettings probe : settings.probes()) {
      probes.add(new ProbeWatch(probe, settings.signal()));
    }
    course = new Course(settings.firing());
    annunciator = new Annunciator(settings.alarm(), settings.probeNames());
    lookForLeaps();
  }

  /** Takes one input and says what follows from it. Inputs come in the order of their moments. */
  public Outcome accept(Input input) {
    if (input instanceof Input.Measured measured) {
      return measured(measured);
    }
    return new Outcome(true, Optional.empty(), List.copyOf(deed(input)));
  }

  /** What is true now. */
  public View view() {
    return new View(
        settings.kiln(),
        course.phase(),
        settings.targetC(),
        probes.stream().map(probe -> new View.ProbeView(probe.name(), probe.latest())).toList(),
        course
            .begun()
            .map(b -> new View.OpenFiring(b.since(), b.name(), b.byItself(), course.gasOffSaid())),
        outlook.forecast(),
        annunciator.standing().stream().map(View.StandingAlarm::of).toList(),
        annunciator.watched().stream()
            .map(w -> new View.WatchedAlarm(w.called(), w.probe(), w.kind(), w.state()))
            .toList(),
        annunciator.isFlood());
  }

  /** What was last reported of the machine. */
  public Machine machine() {
    return machine;
  }

  private Outcome measured(Input.Measured input) {
    Optional<ProbeWatch> of = probeOf(input.reading());
    if (of.isEmpty()) {
      return new Outcome(false, Optional.empty(), List.of());
    }
    ProbeWatch probe = of.get();
    Moment at = input.at();
    Judged judged = probe.judge(input.reading(), course.phase());
    boolean idle = course.phase() == Phase.IDLE;
    if (idle && !probe.keepsWhileIdle(judged) && !annunciator.hasExpired(at)) {
      probe.pass(judged);
      return new Outcome(false, probe.latest(), List.of());
    }
    if (probe.behindGap(at, idle)) {
      annunciator.pause(probe.name());
      pauseOutlook(probe);
    }
    boolean spike = probe.takesForSpike(judged);
    List<Event> events = new ArrayList<>(0);
    if (isFollowed(probe)) {
      if (probe.comesBack() && !idle) {
        course.resume(); // the time away is none for which the kiln has fallen
      }
      OptionalDouble seenC = forCourse(probe, judged, spike);
      if (seenC.isPresent()) {
        double celsius = seenC.getAsDouble();
        tell(at, course.look(at, celsius, outlook.isTooCold(at, celsius)), events);
        outlook.look(at, celsius, course.phase(), settings.targetC());
      } else {
        outlook.miss(at);
      }
    }
    judged = probe.conclude(judged, spike, course.phase());
    announce(at, annunciator.look(situation(probe, judged)), events);
    return new Outcome(true, Optional.of(judged), events);
  }

  /**
   * A bad signal moves no phase: of a noisy one the middle of a minute, of one that jumps or has
   * left the kiln none.
   */
  private OptionalDouble forCourse(ProbeWatch probe, Judged judged, boolean spike) {
    boolean none = spike || judged.temperatureC().isEmpty();
    boolean left = probe.leftKiln() && course.phase() != Phase.IDLE;
    if (none || left || annunciator.signalJumps(probe.name())) {
      return OptionalDouble.empty();
    }
    return annunciator.signalBad(probe.name()) ? probe.freshMiddleC() : judged.temperatureC();
  }

  private void pauseOutlook(ProbeWatch probe) {
    if (isFollowed(probe)) {
      outlook.gap();
    }
  }

  /** A kiln with one probe takes whatever its readings are called, as in an old recording. */
  private Optional<ProbeWatch> probeOf(Reading reading) {
    if (probes.size() == 1) {
      return Optional.of(probes.get(0));
    }
    for (ProbeWatch probe : probes) {
      if (probe.name().equals(reading.probe())) {
        return Optional.of(probe);
      }
    }
    return Optional.empty();
  }

  private boolean isFollowed(ProbeWatch probe) {
    return probe == probes.get(0);
  }

  private Situation situation(ProbeWatch probe, Judged judged) {
    Moment at = judged.reading().at();
    return new Situation(
        at,
        settings.kiln(),
        probe.name(),
        course.phase(),
        course.gasOffSaid(),
        isFollowed(probe) && outlook.tooCold(),
        probe.unwatchedS(),
        probe.silentS(at),
        probe.temperatureC(judged.fault()),
        judged.fault(),
        judged.climb(),
        probe.onsetBeside(judged.fault()),
        probe.quickClimbBeside(judged.fault()),
        probe.recentPeakC(),
        outlook.highestC(),
        outlook.forecast(),
        probe.health(),
        false,
        meant(probe, at),
        machine,
        neighbour(probe, at));
  }

  private Meant meant(ProbeWatch probe, Moment at) {
    boolean followed = isFollowed(probe);
    return new Meant(
        settings.targetC(),
        settings.firing().holdMinutes(),
        followed ? course.plannedC(at) : OptionalDouble.empty(),
        followed && course.planRests(at),
        followed ? course.inPhaseS(at) : OptionalDouble.empty(),
        probe.limitC(),
        probe.coupleEndC(),
        followed ? Optional.empty() : Optional.of(probes.get(0).name()));
  }

  private Optional<Neighbour> neighbour(ProbeWatch probe, Moment at) {
    if (isFollowed(probe) || !probe.isCompared()) {
      return Optional.empty();
    }
    ProbeWatch followed = probes.get(0);
    boolean noSingleOne = annunciator.signalBad(followed.name());
    return Optional.of(new Neighbour(followed.name(), followed.temperatureNear(at, noSingleOne)));
  }

  private List<Event> deed(Input input) {
    List<Event> events = new ArrayList<>();
    Moment at = input.at();
    if (!(input instanceof Input.Resumed)) {
      annunciator.reach(at);
    }
    if (input instanceof Input.Began began) {
      tell(at, course.begin(at, began.name()), events);
    } else if (input instanceof Input.Ended) {
      tell(at, course.end(), events);
    } else if (input instanceof Input.Declared declared) {
      tell(at, course.declare(at, declared.phase()), events);
      if (declared.phase() != Phase.COOLING) {
        // whoever shuts the gas says nothing of the number
        probes.forEach(ProbeWatch::trustLevel);
        outlook.trust();
      }
    } else if (input instanceof Input.Resumed resumed) {
      resume(resumed);
    } else if (input instanceof Input.Configured configured) {
      configure(at, configured.settings(), events);
    } else if (input instanceof Input.Reported reported) {
      report(reported);
    } else {
      announce(at, answered(input), events);
    }
    return events;
  }

  private List<Annunciator.Standing> answered(Input input) {
    Moment at = input.at();
    if (input instanceof Input.Acknowledged answer) {
      return annunciator.acknowledge(at, answer.alarmId(), answer.by());
    } else if (input instanceof Input.Shelved shelved) {
      return annunciator.shelve(at, shelved.alarmId(), shelved.shelving());
    } else if (input instanceof Input.Unshelved unshelved) {
      return annunciator.unshelve(at, unshelved.alarmId());
    } else if (input instanceof Input.Reset reset) {
      return annunciator.reset(at, reset.alarmId());
    }
    return List.of();
  }

  /** A clock that is set while no firing is on spoils no record. */
  private void report(Input.Reported reported) {
    if (course.phase() != Phase.IDLE || !(reported.report() instanceof Report.ClockJump)) {
      machine = machine.with(reported.at(), reported.report());
    }
  }

  private void resume(Input.Resumed resumed) {
    probes.forEach(ProbeWatch::resume);
    course.resume();
    outlook.gap();
    annunciator.resume(resumed.at(), resumed.away());
  }

  /** A probe that keeps its name goes on; one that is new or renamed starts anew. */
  private void configure(Moment at, WatchSettings other, List<Event> events) {
    List<ProbeWatch> before = probes;
    probes = new ArrayList<>();
    for (ProbeSettings probe : other.probes()) {
      Optional<ProbeWatch> known =
          before.stream().filter(one -> one.name().equals(probe.name())).findFirst();
      known.ifPresent(one -> one.configure(probe, other.signal()));
      probes.add(known.orElseGet(() -> new ProbeWatch(probe, other.signal())));
    }
    if (!other.probe().equals(settings.probe()) || !other.signal().equals(settings.signal())) {
      outlook.gap();
    }
    settings = other;
    lookForLeaps();
    course.configure(other.firing());
    announce(at, annunciator.configure(other.alarm(), other.probeNames()), events);
  }

  private void lookForLeaps() {
    boolean asked = settings.alarm().of(AlarmKind.PROBE_LEAPT).enabled();
    probes.forEach(probe -> probe.seesLeaps(asked));
  }

  private void tell(Moment at, List<Course.Step> steps, List<Event> events) {
    for (Course.Step step : steps) {
      if (step instanceof Course.Step.Begins) {
        probes.forEach(ProbeWatch::begin);
        outlook.begin();
      }
      events.add(StepEvents.of(at, step, settings.probe().name()));
    }
  }

  private static void announce(Moment at, List<Annunciator.Standing> changes, List<Event> events) {
    for (Annunciator.Standing one : changes) {
      events.add(
          one.reminder()
              ? new Event.AlarmReminded(at, one.id(), one.probe(), one.kind(), one.message())
              : new Event.AlarmChanged(
                  at, one.id(), one.probe(), one.kind(), one.state(), one.message()));
    }
  }
}
