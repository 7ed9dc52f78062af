package org.climbwatch.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.alarm.Annunciator;
import org.climbwatch.alarm.Situation;
import org.climbwatch.firing.Course;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.Track;

/**
 * The state machine of one kiln: readings and the potter's deeds in, events out.
 *
 * <p>While no firing is on, readings that are not kept change nothing but what {@link #view} shows,
 * so the kept ones alone lead to the same state.
 */
public final class Watch {
  private static final long SLOWEST_INTERVAL_MILLIS = 10_000;

  private WatchSettings settings;
  private Judge judge;
  private Track track;
  private final Course course;
  private final Annunciator annunciator;
  private final IdleKeeper idleKeeper = new IdleKeeper();
  private Optional<Judged> latest = Optional.empty();
  private Optional<Moment> lastKeptAt = Optional.empty();

  public Watch(WatchSettings settings) {
    this.settings = settings;
    judge = new Judge(settings.probe());
    track = new Track(settings.signal());
    course = new Course(settings.firing());
    annunciator = new Annunciator(settings.alarm());
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
        latest,
        course
            .begun()
            .map(b -> new View.OpenFiring(b.since(), b.name(), b.byItself(), course.gasOffSaid())),
        annunciator.standing().stream()
            .map(s -> new View.StandingAlarm(s.id(), s.kind(), s.state(), s.since(), s.message()))
            .toList());
  }

  private Outcome measured(Input.Measured input) {
    Moment at = input.at();
    Judged judged = judge.judge(input.reading(), course.phase());
    boolean idle = course.phase() == Phase.IDLE;
    if (idle && !idleKeeper.keeps(at, judged.temperatureC().orElse(Double.NaN), judged.fault())) {
      latest = Optional.of(judged);
      return new Outcome(false, latest, List.of());
    }
    pauseIfGap(at, idle);
    boolean spike =
        judged.temperatureC().isPresent()
            && track.isSpike(at.millis(), judged.temperatureC().getAsDouble());
    List<Event> events = new ArrayList<>(0);
    if (judged.temperatureC().isPresent() && !spike) {
      tell(at, course.look(at, judged.temperatureC().getAsDouble()), events);
    }
    Optional<Climb> climb = judged.fault().isPresent() ? Optional.empty() : track.climb();
    judged = Judge.with(judged, spike, climb, course.phase());
    latest = Optional.of(judged);
    for (Annunciator.Standing change : annunciator.look(situation(judged, climb))) {
      events.add(changed(at, change));
    }
    return new Outcome(true, latest, events);
  }

  /** While idle, readings lie a minute apart on purpose, and delays run on over that. */
  private void pauseIfGap(Moment at, boolean idle) {
    long longestMillis = idle ? IdleKeeper.PACE_MILLIS + SLOWEST_INTERVAL_MILLIS : Track.GAP_MILLIS;
    boolean gap =
        lastKeptAt.isPresent()
            && (!lastKeptAt.get().sameBoot(at) || at.millisSince(lastKeptAt.get()) > longestMillis);
    if (gap) {
      track.reset();
      annunciator.resume();
    }
    lastKeptAt = Optional.of(at);
  }

  private Situation situation(Judged judged, Optional<Climb> climb) {
    boolean faulty = judged.fault().isPresent();
    return new Situation(
        judged.reading().at(),
        settings.kiln(),
        settings.probe().name(),
        course.phase(),
        course.gasOffSaid(),
        faulty ? judged.temperatureC() : track.temperatureC(),
        judged.fault(),
        climb,
        faulty ? Optional.empty() : track.quickClimb(),
        track.recentPeakC(),
        settings.targetC());
  }

  private List<Event> deed(Input input) {
    List<Event> events = new ArrayList<>();
    Moment at = input.at();
    if (input instanceof Input.Began began) {
      tell(at, course.begin(at, began.name()), events);
    } else if (input instanceof Input.Ended) {
      tell(at, course.end(), events);
    } else if (input instanceof Input.Declared declared) {
      tell(at, course.declare(at, declared.phase()), events);
    } else if (input instanceof Input.Acknowledged acknowledged) {
      annunciator
          .acknowledge(acknowledged.alarmId())
          .ifPresent(change -> events.add(changed(at, change)));
    } else if (input instanceof Input.Resumed) {
      resume();
    } else if (input instanceof Input.Configured configured) {
      configure(configured.settings());
    }
    return events;
  }

  private void resume() {
    track.reset();
    course.resume();
    annunciator.resume();
  }

  private void configure(WatchSettings other) {
    if (!other.signal().equals(settings.signal()) || !other.probe().equals(settings.probe())) {
      track = new Track(other.signal());
    }
    settings = other;
    judge = new Judge(other.probe());
    course.configure(other.firing());
    annunciator.configure(other.alarm());
  }

  private static void tell(Moment at, List<Course.Step> steps, List<Event> events) {
    for (Course.Step step : steps) {
      if (step instanceof Course.Step.Begins begins) {
        Course.Begun begun = begins.begun();
        String how = begun.byItself() ? "The kiln warms: a firing has begun." : "Firing begun.";
        events.add(new Event.FiringBegan(at, begun.since(), begun.name(), begun.byItself(), how));
      } else if (step instanceof Course.Step.Enters enters) {
        String message = enters.phase().title() + ". " + enters.why();
        events.add(new Event.PhaseChanged(at, enters.phase(), message));
      } else if (step instanceof Course.Step.Ends ends) {
        events.add(
            new Event.FiringEnded(
                at, ends.begun().name(), ends.byItself(), "Firing over. " + ends.why()));
      }
    }
  }

  private static Event changed(Moment at, Annunciator.Standing change) {
    return new Event.AlarmChanged(at, change.id(), change.kind(), change.state(), change.message());
  }
}
