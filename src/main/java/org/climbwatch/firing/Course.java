package org.climbwatch.firing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Moment;

/**
 * The course of a firing: begins, passes through its phases and ends, by the potter's word or by
 * itself.
 *
 * <pre>
 *           warms / word          dry            falls long / word        cold / word
 *   IDLE ------------------> DRYING -> CLIMBING -------------------> COOLING ---------> IDLE
 *                                       |    ^                          |
 *                                  word v    | word        warms again  v
 *                                     HOLDING                        CLIMBING
 * </pre>
 */
public final class Course {
  /** °C below the peak at which a firing that never got hot can be over, too. */
  private static final double ABANDONED_DROP_C = 20;

  /**
   * °C/h since the peak: a shut fibre kiln falls by 200 to 400 at first (common practice), one
   * whose fire has only grown weak drifts down more slowly and is not to be taken for cooling.
   */
  private static final double LEAST_FALL_C_PER_HOUR = 60;

  /** °C above the lowest since the peak from which a fall is counted anew, as after relighting. */
  private static final double RISEN_C = 20;

  /** ms for which what was too cold for a kiln ends nothing yet: first it may be opened. */
  private static final long DOUBTED_MILLIS = 300_000;

  /** ms within which a signal is back that was away: what climbs for longer has a fire. */
  private static final long RETURN_MILLIS = 60_000;

  private FiringSettings settings;
  private final Warming warming = new Warming();
  private Phase phase = Phase.IDLE;
  private Optional<Begun> begun = Optional.empty();
  private double peakC;
  private double lowestSinceC;
  private Optional<Moment> peakAt = Optional.empty();
  private Optional<Moment> phaseAt = Optional.empty();
  private boolean coldOnce;
  private Optional<Moment> tooColdAt = Optional.empty();
  private boolean gasOffSaid;

  /**
   * How the firing that is on began.
   *
   * @param since its first reading's moment, or that of the potter's word
   * @param name what the potter calls it, or a plain word where nobody named it
   */
  public record Begun(Moment since, String name, boolean byItself) {}

  /** A step of the course. */
  public sealed interface Step {
    /** A firing began. */
    record Begins(Begun begun) implements Step {}

    /** The phase changed; why, as a sentence. */
    record Enters(Phase phase, String why) implements Step {}

    /** The firing is over; why, as a sentence. */
    record Ends(Begun begun, boolean byItself, String why) implements Step {}
  }

  public Course(FiringSettings settings) {
    this.settings = settings;
  }

  public Phase phase() {
    return phase;
  }

  public Optional<Begun> begun() {
    return begun;
  }

  /** Whether the potter has said that the gas is off. */
  public boolean gasOffSaid() {
    return gasOffSaid;
  }

  /** s since the phase began; empty while idle, and after a restart of the machine. */
  public OptionalDouble inPhaseS(Moment at) {
    return phase == Phase.IDLE ? OptionalDouble.empty() : sinceS(phaseAt, at);
  }

  /** °C that the plan wants now; empty without a plan, and after a restart of the machine. */
  public OptionalDouble plannedC(Moment at) {
    OptionalDouble elapsedS = sinceS(begun.map(Begun::since), at);
    return settings.plan().segments().isEmpty() || elapsedS.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(settings.plan().meantC(elapsedS.getAsDouble()));
  }

  /** Whether the plan wants the kiln to hold or to come down now; false where it is not known. */
  public boolean planRests(Moment at) {
    OptionalDouble elapsedS = sinceS(begun.map(Begun::since), at);
    return elapsedS.isPresent() && settings.plan().rests(elapsedS.getAsDouble());
  }

  private static OptionalDouble sinceS(Optional<Moment> from, Moment at) {
    return from.isPresent() && from.get().sameBoot(at)
        ? OptionalDouble.of(at.millisSince(from.get()) / 1000.0)
        : OptionalDouble.empty();
  }

  /** Goes on under other settings. */
  public void configure(FiringSettings other) {
    settings = other;
  }

  /** The potter begins a firing. One that was on is over. */
  public List<Step> begin(Moment at, String name) {
    List<Step> steps = new ArrayList<>();
    if (begun.isPresent()) {
      steps.addAll(finish(false, "A new firing begins."));
    }
    steps.addAll(open(new Begun(at, name.isBlank() ? "firing" : name.strip(), false)));
    return steps;
  }

  /** The potter ends the firing; nothing when none is on. */
  public List<Step> end() {
    return begun.isEmpty() ? List.of() : finish(false, "Ended by the potter.");
  }

  /** The potter says what the kiln is meant to do; nothing when no firing is on. */
  public List<Step> declare(Moment at, Phase meant) {
    if (begun.isEmpty() || meant == Phase.IDLE || meant == Phase.DRYING) {
      return List.of();
    }
    List<Step> steps = List.of();
    if (meant == phase) {
      countFallFrom(at);
    } else {
      steps = enter(at, meant, "By the potter's word.");
    }
    gasOffSaid = meant == Phase.COOLING;
    return steps;
  }

  /** After a gap, durations start anew. */
  public void resume() {
    warming.reset();
    peakAt = Optional.empty();
    tooColdAt = Optional.empty();
    coldOnce = false;
  }

  /**
   * Takes a temperature that is no spike.
   *
   * @param temperatureC °C
   * @param tooCold whether no kiln can have cooled to it since it was hot; it ends nothing then
   */
  public List<Step> look(Moment at, double temperatureC, boolean tooCold) {
    if (begun.isEmpty()) {
      return lookIdle(at, temperatureC);
    }
    lookForPeak(at, temperatureC);
    tooColdAt = tooCold ? Optional.of(at) : tooColdAt;
    return switch (phase) {
      case IDLE -> List.of();
      case DRYING, CLIMBING, HOLDING -> tooCold ? List.of() : lookHot(at, temperatureC);
      case COOLING -> lookCooling(at, temperatureC, tooCold);
    };
  }

  private void lookForPeak(Moment at, double temperatureC) {
    if (temperatureC > peakC || peakAt.isEmpty()) {
      peakC = Math.max(peakC, temperatureC);
      peakAt = Optional.of(at);
      lowestSinceC = temperatureC;
    } else if (temperatureC > lowestSinceC + RISEN_C) {
      peakC = temperatureC;
      peakAt = Optional.of(at);
      lowestSinceC = temperatureC;
    }
    lowestSinceC = Math.min(lowestSinceC, temperatureC);
  }

  private List<Step> lookIdle(Moment at, double temperatureC) {
    if (!settings.beginsByItself()) {
      return List.of();
    }
    return warming
        .look(at, temperatureC, settings.beginRiseC())
        .map(since -> open(new Begun(since, "firing", true)))
        .orElse(List.of());
  }

  private List<Step> lookHot(Moment at, double temperatureC) {
    if (phase == Phase.DRYING && temperatureC >= settings.dryBelowC()) {
      return enter(at, Phase.CLIMBING, "Above the drying range.");
    }
    if (comesDownAsPlanned(at, temperatureC)) {
      countFallFrom(at); // what is left of it when the plan leads up again is no fall
      return List.of();
    }
    double dropC = peakC - temperatureC;
    boolean fallen =
        (dropC >= settings.coolingDropC() && dropC >= LEAST_FALL_C_PER_HOUR * hoursSincePeak(at))
            || (dropC >= ABANDONED_DROP_C && temperatureC < settings.endBelowC());
    boolean longSince =
        peakAt.isPresent() && at.millisSince(peakAt.get()) >= settings.coolingAfterSeconds() * 1000;
    if (!fallen || !longSince) {
      return List.of();
    }
    return enter(
        at,
        Phase.COOLING,
        "It has fallen for so long that the fire is out. If you did not shut the gas, shut it now at burner and bottle.");
  }

  private boolean comesDownAsPlanned(Moment at, double temperatureC) {
    OptionalDouble elapsedS = sinceS(begun.map(Begun::since), at);
    OptionalDouble plannedC = plannedC(at);
    return plannedC.isPresent()
        && settings.plan().restsOnItsWay(elapsedS.getAsDouble())
        && temperatureC >= plannedC.getAsDouble() - Plan.BY_HAND_C;
  }

  private double hoursSincePeak(Moment at) {
    return peakAt.isPresent() ? at.millisSince(peakAt.get()) / 3_600_000.0 : 0;
  }

  /** A number that is not the kiln's ends nothing; but one that climbs is a fire. */
  private List<Step> lookCooling(Moment at, double temperatureC, boolean tooCold) {
    boolean cold = temperatureC < settings.endBelowC() && !tooCold;
    boolean believed = tooColdAt.isEmpty() || at.millisSince(tooColdAt.get()) >= DOUBTED_MILLIS;
    boolean sure = cold && coldOnce && believed;
    coldOnce = cold;
    if (sure) {
      return finish(true, "The kiln is cold.");
    }
    return warms(at, temperatureC, tooCold)
        ? enter(at, Phase.CLIMBING, "It warms again.")
        : List.of();
  }

  /** What comes back from a number that was too cold is soon there, and has not warmed. */
  private boolean warms(Moment at, double temperatureC, boolean tooCold) {
    if (!tooCold && tooColdAt.isPresent() && at.millisSince(tooColdAt.get()) < RETURN_MILLIS) {
      warming.reset();
    }
    return warming
        .look(at, temperatureC, settings.beginRiseC())
        .filter(since -> !tooCold || at.millisSince(since) >= RETURN_MILLIS)
        .isPresent();
  }

  private List<Step> open(Begun opened) {
    begun = Optional.of(opened);
    phase = Phase.DRYING;
    phaseAt = Optional.of(opened.since());
    peakC = Double.NEGATIVE_INFINITY;
    peakAt = Optional.empty();
    coldOnce = false;
    tooColdAt = Optional.empty();
    warming.reset();
    return List.of(new Step.Begins(opened));
  }

  private List<Step> enter(Moment at, Phase next, String why) {
    phase = next;
    phaseAt = Optional.of(at);
    gasOffSaid = false;
    warming.reset();
    coldOnce = false;
    countFallFrom(at);
    return List.of(new Step.Enters(next, why));
  }

  /** A fall is counted from here, not from a peak before the potter's word. */
  private void countFallFrom(Moment at) {
    peakAt = Optional.of(at);
    lowestSinceC = Double.POSITIVE_INFINITY;
    peakC = phase == Phase.COOLING ? peakC : Double.NEGATIVE_INFINITY;
  }

  private List<Step> finish(boolean byItself, String why) {
    Begun finished = begun.orElseThrow();
    begun = Optional.empty();
    phase = Phase.IDLE;
    gasOffSaid = false;
    warming.reset();
    return List.of(new Step.Ends(finished, byItself, why));
  }
}
