package org.climbwatch.signal;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One probe's run of temperatures: sets spikes aside, and says how fast the kiln climbs.
 *
 * <p>A pause of more than {@link #GAP_MILLIS} starts it afresh: no rate is ever taken across a gap.
 */
public final class Track {
  /** Milliseconds without a temperature that make a gap. The slowest interval is 10 s. */
  public static final long GAP_MILLIS = 45_000;

  private static final double PEAK_WINDOW_S = 180;

  private final SpikeFilter spikes;
  private final ClimbEstimator climb;
  private final ClimbEstimator quickClimb;
  private final RecentPeak peak = new RecentPeak(PEAK_WINDOW_S);
  private final OnsetWatch onset = new OnsetWatch();
  private OptionalDouble lastC = OptionalDouble.empty();
  private long lastMillis;

  public Track(SignalSettings settings) {
    spikes = new SpikeFilter(settings.spikeC());
    climb = new ClimbEstimator(settings.climbWindowSeconds());
    quickClimb = new ClimbEstimator(settings.fallWindowSeconds());
  }

  /**
   * Takes a temperature.
   *
   * @param millis monotonic, not before the last one
   * @param temperatureC °C, finite
   * @return whether it was set aside as a spike
   */
  public boolean isSpike(long millis, double temperatureC) {
    if (lastC.isPresent() && millis - lastMillis > GAP_MILLIS) {
      reset();
    }
    if (spikes.isSpike(millis, temperatureC)) {
      return true;
    }
    climb.add(millis, temperatureC);
    quickClimb.add(millis, temperatureC);
    peak.add(millis, temperatureC);
    onset.add(millis, temperatureC);
    lastC = OptionalDouble.of(temperatureC);
    lastMillis = millis;
    return false;
  }

  /** A firing begins: spans of time are counted from here, as a recording of it counts them. */
  public void countAfresh() {
    onset.countAfresh();
  }

  /** Forgets what rates rest on, as when the readings have made a step that is no climb. */
  public void restartRates() {
    climb.reset();
    quickClimb.reset();
    peak.reset();
    onset.reset();
  }

  /** Forgets everything, as after a gap. */
  public void reset() {
    spikes.reset();
    climb.reset();
    quickClimb.reset();
    peak.reset();
    onset.reset();
    lastC = OptionalDouble.empty();
  }

  /** °C, the newest that is no spike. */
  public OptionalDouble temperatureC() {
    return lastC;
  }

  /** Over the long window; empty until enough of it is filled. */
  public Optional<Climb> climb() {
    return climb.climb();
  }

  /** Over the short window; empty until enough of it is filled. */
  public Optional<Climb> quickClimb() {
    return quickClimb.climb();
  }

  /** How the last moments go against the minutes before; empty until enough is known. */
  public Optional<FallOnset> onset() {
    return onset.onset();
  }

  /** °C, the highest of the last three minutes. */
  public OptionalDouble recentPeakC() {
    return peak.peakC();
  }
}
