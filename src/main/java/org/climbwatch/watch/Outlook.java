package org.climbwatch.watch;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.Forecast;
import org.climbwatch.signal.Forecaster;
import org.climbwatch.signal.HeatLeft;

/** Where the firing is heading, by its followed probe, while the kiln is meant to climb. */
final class Outlook {
  private static final Forecast NOT_CLIMBING = new Forecast.NotYet(Forecast.Reason.NOT_CLIMBING);

  private static final Forecast NOT_SEEN = new Forecast.NotYet(Forecast.Reason.TOO_EARLY);

  /** ms without a temperature after which nobody knows what the fire has done meanwhile. */
  private static final long UNSEEN_MILLIS = 120_000;

  private final Forecaster forecaster = new Forecaster();
  private boolean climbing;
  private Optional<Moment> lastAt = Optional.empty();
  private boolean unseen;
  private OptionalDouble highestC = OptionalDouble.empty();
  private final HeatLeft heat = new HeatLeft();
  private boolean tooCold;

  /** A new firing begins. */
  void begin() {
    forecaster.reset();
    highestC = OptionalDouble.empty();
    trust();
  }

  /** Somebody has looked at the number and believes it. */
  void trust() {
    heat.forget();
    tooCold = false;
  }

  /** Nothing is known of what lies between. */
  void gap() {
    forecaster.gap();
  }

  /**
   * Takes a temperature that is no spike; whether no kiln can have cooled to it since it was hot.
   */
  boolean isTooCold(Moment at, double celsius) {
    tooCold = !heat.canBe(at, celsius);
    return tooCold;
  }

  /** The same as of the newest one. */
  boolean tooCold() {
    return tooCold;
  }

  /** Takes a temperature that is no spike. */
  void look(Moment at, double celsius, Phase phase, OptionalDouble targetC) {
    if (lastAt.isPresent() && !lastAt.get().sameBoot(at)) {
      forecaster.reset();
    }
    lastAt = Optional.of(at);
    unseen = false;
    highestC = OptionalDouble.of(Math.max(celsius, highestC.orElse(celsius)));
    boolean climbsNow = phase == Phase.CLIMBING;
    if (climbsNow != climbing) {
      forecaster.reset();
      climbing = climbsNow;
    }
    if (climbsNow) {
      forecaster.add(at.millis(), celsius, targetC);
    }
  }

  /** There is no temperature to take. */
  void miss(Moment at) {
    unseen =
        lastAt.isPresent()
            && (!lastAt.get().sameBoot(at) || at.millisSince(lastAt.get()) > UNSEEN_MILLIS);
  }

  Forecast forecast() {
    if (climbing && unseen) {
      return NOT_SEEN;
    }
    return climbing ? forecaster.forecast() : NOT_CLIMBING;
  }

  /** °C, the highest of this firing. */
  OptionalDouble highestC() {
    return highestC;
  }
}
