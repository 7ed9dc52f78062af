package org.climbwatch.source;

import java.time.Duration;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.slf4j.Logger;

/**
 * Writes the change of a source's health to the log, not the state: one line when its device stops
 * being heard, one when it is heard again, with how long that was. One thread owns it.
 */
public final class OutageLog {
  private final Logger log;
  private final String probe;
  private Optional<Fault> outage = Optional.empty();
  private long sinceNanos;

  public OutageLog(Logger log, String probe) {
    this.log = log;
    this.probe = probe;
  }

  /** The device speaks and is understood, whatever it says of its thermocouple. */
  public void heard(long nowNanos) {
    if (outage.isPresent()) {
      Duration length = Duration.ofNanos(nowNanos - sinceNanos);
      log.info("probe \"{}\": heard again after {} s", probe, length.toSeconds());
      outage = Optional.empty();
    }
  }

  /**
   * The device is not heard.
   *
   * @param details which device, what was seen and what to do, as the source describes itself
   */
  public void notHeard(Fault fault, String details, long nowNanos) {
    if (outage.isEmpty()) {
      sinceNanos = nowNanos;
    }
    if (!outage.equals(Optional.of(fault))) {
      log.warn("probe \"{}\": {}", probe, details);
      outage = Optional.of(fault);
    }
  }
}
