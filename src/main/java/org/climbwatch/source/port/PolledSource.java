package org.climbwatch.source.port;

import java.util.Optional;
import java.util.function.Supplier;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.OutageLog;
import org.climbwatch.source.Signal;
import org.climbwatch.source.Source;
import org.slf4j.LoggerFactory;

/**
 * A probe that is asked over a shared line: hands the newest answer over, without ever waiting for
 * the line.
 */
public final class PolledSource implements Source {
  private final String probe;
  private final AnswerLedger ledger;
  private final SharedPorts.Place place;
  private final Supplier<String> device;
  private final OutageLog outages;

  /**
   * @param device which device, for people
   */
  public PolledSource(
      String probe, AnswerLedger ledger, SharedPorts.Place place, Supplier<String> device) {
    this.probe = probe;
    this.ledger = ledger;
    this.place = place;
    this.device = device;
    this.outages = new OutageLog(LoggerFactory.getLogger(PolledSource.class), probe);
  }

  @Override
  public Optional<Reading> read(Moment at) {
    long now = System.nanoTime();
    Optional<Signal> signal = ledger.take(now);
    signal.ifPresent(heard -> note(heard, now));
    return signal.map(heard -> heard.reading(at, probe));
  }

  private void note(Signal signal, long now) {
    if (signal instanceof Signal.Faulty faulty && isOutage(faulty.fault())) {
      outages.notHeard(faulty.fault(), describe(), now);
    } else {
      outages.heard(now);
    }
  }

  /** Whether no value is had, as against a fault that the device reports of its thermocouple. */
  private static boolean isOutage(Fault fault) {
    return fault.silence() || fault == Fault.GARBLED || fault == Fault.NO_VALUE;
  }

  @Override
  public String describe() {
    return device.get() + ": " + ledger.describe(System.nanoTime());
  }

  @Override
  public void close() {
    place.close();
  }
}
