package org.climbwatch.signal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One probe's run of readings, looked at for what is wrong with probe, lead and amplifier.
 *
 * <p>Each idea is a class of its own; this one feeds them. All of them cost the same however long
 * the run.
 */
public final class Health {
  /**
   * °C that stand for terminals of which nothing is told: boxes are seldom colder, so swapped wires
   * are found a little later than beside the true one.
   */
  private static final double FREEZING_C = 0;

  /** °C of a step that is either {@link Leap}'s or the fire's. */
  private static final double DEEP_C = 200;

  private final Noise noise = new Noise();
  private final LookSpread lookSpread = new LookSpread();
  private final Jumps jumps = new Jumps();
  private final Leap leap = new Leap();
  private final Unmoved unmoved = new Unmoved();
  private final ColdJunctionTrend coldJunctionTrend = new ColdJunctionTrend();
  private final ColdRest rest = new ColdRest();
  private final ReversalWatch reversalWatch = new ReversalWatch();
  private final MinuteMiddles minutes = new MinuteMiddles();
  private Optional<Reversal> reversal = Optional.empty();
  private OptionalDouble coldJunctionC = OptionalDouble.empty();
  private long lastMillis;

  /**
   * Takes a temperature.
   *
   * @param millis monotonic, not before the last one
   * @param raw what the instrument said: mV, or °C where it linearises
   * @param celsius °C, spikes among them
   * @param cold °C of the terminals, where the instrument tells
   * @param spreadC °C, of the looks that the reading is the middle of, where there are several
   * @return whether it completes a step that no kiln makes, so that no rate may be taken across it;
   *     not of a deep one that slow readings may have made of a lost flame or an opened door, which
   *     nothing would speak of then
   */
  public boolean jumps(
      long millis, double raw, double celsius, OptionalDouble cold, OptionalDouble spreadC) {
    lastMillis = millis;
    coldJunctionC = cold;
    boolean away = isAway();
    leap.add(millis, celsius, cold, noise.noiseC().orElse(0));
    if (away != isAway()) {
      minutes.reset(); // no fall is taken across the leap
    }
    noise.add(celsius);
    lookSpread.add(spreadC);
    unmoved.add(millis, raw, celsius);
    minutes.add(millis, celsius);
    if (cold.isPresent()) {
      double coldC = cold.getAsDouble();
      coldJunctionTrend.add(millis, coldC);
      rest.add(millis, celsius, coldC);
    }
    reversal = reversalWatch.look(millis, celsius, cold.orElse(FREEZING_C));
    boolean step = jumps.add(millis, celsius);
    return step && (away || isAway() || Math.abs(jumps.newestC()) < DEEP_C);
  }

  /** Takes a look that gave no temperature though the amplifier answered. */
  public void fault(long millis) {
    lastMillis = millis;
    noise.breakOff();
    jumps.fault();
    leap.fault();
    unmoved.reset();
  }

  /** A firing begins: spans of time are counted from here, as a recording of it counts them. */
  public void countAfresh() {
    minutes.countAfresh();
    reversalWatch.countAfresh();
    leap.trust();
  }

  /**
   * The potter says what the kiln does, or the probe is another: the level of now is the kiln's.
   */
  public void trustLevel() {
    leap.trust();
  }

  /** Whether the signal stands on a level that no kiln can reach. */
  public boolean isAway() {
    return leap.awayC().isPresent();
  }

  /** Whether the newest readings stand on another level, or may do so, that no kiln can reach. */
  public boolean leftKiln() {
    return leap.unsure() || leap.awayC().isPresent();
  }

  /** Goes on after a restart: forgets the run, and the clock may begin anew. */
  public void resume() {
    reset();
    leap.resume();
  }

  /** Forgets the run, as after a gap; that the signal has left the kiln is kept. */
  public void reset() {
    leap.gap();
    noise.reset();
    lookSpread.reset();
    jumps.reset();
    unmoved.reset();
    coldJunctionTrend.reset();
    rest.reset();
    reversalWatch.reset();
    minutes.reset();
    reversal = Optional.empty();
  }

  /** °C, the middle one of a minute that the last reading completed. */
  public OptionalDouble freshMiddleC() {
    return minutes.fresh() ? minutes.middleC() : OptionalDouble.empty();
  }

  /** What is known now. */
  public SignalHealth now() {
    boolean jumped = jumps.count() > 0;
    return new SignalHealth(
        noise.noiseC(),
        lookSpread.spreadC(),
        jumps.count(),
        jumped && jumps.comeAndGo(),
        jumped ? jumps.largestC() : 0,
        leap.awayC(),
        unmoved.seconds(lastMillis),
        unmoved.finestC(),
        coldJunctionC,
        coldJunctionTrend.cPerMinute(),
        rest.offsetC(),
        reversal,
        minutes.middleC(),
        minutes.fall());
  }
}
