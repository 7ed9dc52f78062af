package org.climbwatch.watch;

import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;

/**
 * Chooses the readings that are worth a place in the journal while no firing is on.
 *
 * <p>One in 70 s; all for half a minute after the quality changed; one whenever the temperature has
 * moved; all while the kiln is hot. A choice rests on the kept readings alone, so going through
 * them again keeps every one of them.
 */
final class IdleKeeper {
  /** ms between kept readings of a quiet kiln. */
  static final long PACE_MILLIS = 70_000;

  private static final long CLOSE_LOOK_MILLIS = 30_000;
  private static final double MOVED_C = 3;
  private static final double HOT_C = 100;

  private Optional<Kept> last = Optional.empty();
  private Optional<Moment> qualityChangedAt = Optional.empty();

  private record Kept(Moment at, double temperatureC, Optional<Fault> fault) {}

  /** Whether a reading is kept. A fault has no temperature: NaN. */
  boolean keeps(Moment at, double temperatureC, Optional<Fault> fault) {
    boolean qualityChanged = last.isEmpty() || !last.get().fault().equals(fault);
    boolean kept =
        qualityChanged
            || !last.get().at().sameBoot(at)
            || at.millisSince(last.get().at()) >= PACE_MILLIS
            || Math.abs(temperatureC - last.get().temperatureC()) >= MOVED_C
            || temperatureC >= HOT_C
            || closeLook(at);
    if (kept) {
      if (qualityChanged) {
        qualityChangedAt = Optional.of(at);
      }
      last = Optional.of(new Kept(at, temperatureC, fault));
    }
    return kept;
  }

  private boolean closeLook(Moment at) {
    return qualityChangedAt.isPresent()
        && qualityChangedAt.get().sameBoot(at)
        && at.millisSince(qualityChangedAt.get()) <= CLOSE_LOOK_MILLIS;
  }
}
