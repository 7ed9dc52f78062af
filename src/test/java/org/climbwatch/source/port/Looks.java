package org.climbwatch.source.port;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;

/** Looks at a source again and again, as the sampler does, and keeps what it gave. */
public final class Looks {
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final long PAUSE_NANOS = Duration.ofMillis(20).toNanos();

  private final Source source;
  private final List<Reading> readings = new ArrayList<>();
  private long longestNanos;

  public Looks(Source source) {
    this.source = source;
  }

  /** Looks until it holds. */
  public void until(BooleanSupplier condition, String what) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError(
            "waited " + PATIENCE.toSeconds() + " s for " + what + "; " + source.describe());
      }
      once();
      LockSupport.parkNanos(PAUSE_NANOS);
    }
  }

  private void once() {
    long began = System.nanoTime();
    Optional<Reading> reading = source.read(new Moment(0, began / 1_000_000));
    longestNanos = Math.max(longestNanos, System.nanoTime() - began);
    reading.ifPresent(readings::add);
  }

  public void untilGood(int more) {
    long wanted = good().size() + more;
    until(() -> good().size() >= wanted, more + " more readings");
  }

  public void untilFault(Fault fault) {
    readings.clear();
    until(() -> faults().contains(fault), fault.word());
  }

  public List<Reading> good() {
    return readings.stream().filter(each -> !(each instanceof Reading.Faulty)).toList();
  }

  public List<Fault> faults() {
    return readings.stream()
        .filter(Reading.Faulty.class::isInstance)
        .map(each -> ((Reading.Faulty) each).fault())
        .toList();
  }

  /** The temperatures of those that a device has linearised. */
  public List<Double> temperatures() {
    return good().stream().map(each -> ((Reading.Linearised) each).temperatureC()).toList();
  }

  public void forget() {
    readings.clear();
  }

  /** How long the longest look took. */
  public Duration longest() {
    return Duration.ofNanos(longestNanos);
  }
}
