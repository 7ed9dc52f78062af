package org.climbwatch.source.serial;

import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Looks;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.OutageLog;
import org.climbwatch.source.Signal;
import org.climbwatch.source.Source;
import org.climbwatch.source.port.PortKeeper;
import org.slf4j.LoggerFactory;

/**
 * A probe whose amplifier prints text lines on a serial port. A reading is the middle of all lines
 * that came since the one before.
 */
public final class SerialSource implements Source {
  private final String probe;
  private final SerialSettings settings;
  private final LineLedger ledger;
  private final PortKeeper keeper;
  private final OutageLog outages;

  /** Starts reading at once; a port that is missing is waited for. */
  public SerialSource(String probe, SerialSettings settings) {
    this(probe, settings, true);
  }

  /**
   * The same.
   *
   * @param everyLine false when the newest line alone makes the reading
   */
  public SerialSource(String probe, SerialSettings settings, boolean everyLine) {
    this.probe = probe;
    this.settings = settings;
    this.ledger =
        new LineLedger(
            settings.silence().toNanos(),
            everyLine ? LineLedger.MOST_UNREAD : 1,
            System.nanoTime());
    this.outages = new OutageLog(LoggerFactory.getLogger(SerialSource.class), probe);
    this.keeper = new PortKeeper("serial-" + probe, settings.line(), new SerialReader(ledger));
    keeper.start();
  }

  @Override
  public Optional<Reading> read(Moment at) {
    long now = System.nanoTime();
    List<Signal> signals = ledger.take(now);
    signals.forEach(heard -> note(heard, now));
    return Looks.middle(at, signals.stream().map(heard -> heard.reading(at, probe)).toList());
  }

  private void note(Signal signal, long now) {
    if (signal instanceof Signal.Faulty faulty && isOutage(faulty.fault())) {
      outages.notHeard(faulty.fault(), describe(), now);
    } else {
      outages.heard(now);
    }
  }

  /** Whether the line itself is at fault, as against a fault that a device reports over it. */
  private static boolean isOutage(Fault fault) {
    return fault.silence() || fault == Fault.GARBLED;
  }

  @Override
  public String describe() {
    return "serial "
        + settings.port()
        + " at "
        + settings.baud()
        + " baud: "
        + ledger.describe(System.nanoTime());
  }

  @Override
  public void close() {
    keeper.close();
  }
}
