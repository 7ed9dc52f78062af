package org.climbwatch.source.spi;

import java.time.Duration;
import java.util.Optional;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/**
 * Notices a chip that says the same for improbably long: stuck chip select, stopped conversions. A
 * frozen frame looks good bit by bit, and would show a burning kiln as cold for ever. One thread
 * owns it.
 */
final class Standstill {
  /** Fewer alike can be chance, also when they lie far apart. */
  static final int LEAST_ALIKE = 60;

  /** mV or °C from which the couple counts as hot: for Type K both mean some 50 to 100 °C. */
  private static final double HOT_MV = 2;

  private static final double HOT_C = 100;

  private static final Moment ANY_TIME = new Moment(0, 0);

  private final Chip chip;
  private Optional<Reading> last = Optional.empty();
  private long sinceNanos;
  private int alike;

  Standstill(Chip chip) {
    this.chip = chip;
  }

  /** Whether this reading has come without the least change for longer than the chip can. */
  boolean standsStill(Reading reading, long nowNanos) {
    Optional<Reading> timeless = timeless(reading);
    if (timeless.isEmpty() || !timeless.equals(last)) {
      last = timeless;
      sinceNanos = nowNanos;
      alike = 0;
      return false;
    }
    alike++;
    Optional<Duration> most = chip.stillAtMost(isHot(reading));
    return most.isPresent()
        && alike >= LEAST_ALIKE
        && nowNanos - sinceNanos >= most.get().toNanos();
  }

  /** Minutes since the last change, for people. */
  long minutes(long nowNanos) {
    return Duration.ofNanos(nowNanos - sinceNanos).toMinutes();
  }

  private static Optional<Reading> timeless(Reading reading) {
    if (reading instanceof Reading.Emf emf) {
      return Optional.of(Reading.emf(ANY_TIME, emf.probe(), emf.emfMv(), emf.coldJunctionC()));
    }
    if (reading instanceof Reading.Linearised own) {
      return Optional.of(
          Reading.linearised(ANY_TIME, own.probe(), own.temperatureC(), own.coldJunctionC()));
    }
    return Optional.empty();
  }

  private static boolean isHot(Reading reading) {
    return reading instanceof Reading.Emf emf
        ? Math.abs(emf.emfMv()) >= HOT_MV
        : ((Reading.Linearised) reading).temperatureC() >= HOT_C;
  }
}
