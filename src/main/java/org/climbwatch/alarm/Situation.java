package org.climbwatch.alarm;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Climb;
import org.climbwatch.signal.FallOnset;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.SignalHealth;

/**
 * All that a rule may look at.
 *
 * @param kiln name of the kiln, for messages
 * @param probe name of the probe, for messages
 * @param phase where the firing stands
 * @param gasOffSaid whether the potter has said that the gas is off; a curve alone cannot know
 * @param tooCold whether the temperature is one that no kiln can have cooled to since it was hot
 * @param unwatchedS s before this reading for which the running program took none; else 0
 * @param silentS s since the device last said anything; empty where that is not known, as after a
 *     restart, or while no firing is on and few readings are kept
 * @param temperatureC °C, without spikes; empty while the probe gives none
 * @param fault why there is no temperature
 * @param climb over the long window
 * @param onset how the last moments go against the minutes before
 * @param quickClimb over the short window
 * @param recentPeakC °C, the highest of the last few minutes
 * @param highestC °C, the highest of this firing by the followed probe
 * @param forecast where the firing is heading by the followed probe
 * @param health what the run of readings says about the probe itself
 * @param signalBad whether a finding stands that the readings are too bad to take a climb from
 * @param meant what the kiln is meant to do
 * @param machine what was last reported of the machine
 * @param neighbour the probe that the firing follows; only where this one is another and is to be
 *     compared with it
 */
public record Situation(
    Moment at,
    String kiln,
    String probe,
    Phase phase,
    boolean gasOffSaid,
    boolean tooCold,
    double unwatchedS,
    OptionalDouble silentS,
    OptionalDouble temperatureC,
    Optional<Fault> fault,
    Optional<Climb> climb,
    Optional<FallOnset> onset,
    Optional<Climb> quickClimb,
    OptionalDouble recentPeakC,
    OptionalDouble highestC,
    Forecast forecast,
    SignalHealth health,
    boolean signalBad,
    Meant meant,
    Machine machine,
    Optional<Neighbour> neighbour) {
  /**
   * As rules are to see it. While single readings are not to be trusted the middle one of the last
   * minute takes their place; while the signal has left the kiln no climb is taken from it.
   *
   * @param noSingleOne whether a finding stands that single readings are not to be trusted
   */
  Situation seen(boolean noSingleOne) {
    if (leftKiln()) {
      return ofBadSignal(temperatureC);
    }
    boolean middle = temperatureC.isPresent() && health.middleC().isPresent();
    return noSingleOne ? ofBadSignal(middle ? health.middleC() : temperatureC) : this;
  }

  private Situation ofBadSignal(OptionalDouble readC) {
    return new Situation(
        at,
        kiln,
        probe,
        phase,
        gasOffSaid,
        tooCold,
        unwatchedS,
        silentS,
        readC,
        fault,
        climb,
        onset,
        quickClimb,
        recentPeakC,
        highestC,
        forecast,
        health,
        true,
        meant,
        machine,
        neighbour);
  }

  /** Whether the signal stands on a level that no kiln can have come to. */
  boolean leftKiln() {
    return health.leapC().isPresent();
  }

  /** Whether an alarm of the fire goes on standing while the kiln cools. */
  boolean stillStands(boolean standing) {
    return standing && !gasOffSaid;
  }
}
