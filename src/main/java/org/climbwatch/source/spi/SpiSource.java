package org.climbwatch.source.spi;

import java.io.IOException;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.OutageLog;
import org.climbwatch.source.Source;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.slf4j.LoggerFactory;

/**
 * A probe on a MAX31855, looked at anew at each call: the chip converts by itself every 0.1 s. A
 * device that can't be opened, or a transfer that failed, is tried again every few seconds.
 */
public final class SpiSource implements Source {
  static final long RETRY_NANOS = 5_000_000_000L;

  private final String probe;
  private final SpiSettings settings;
  private final SpiLink.Opener opener;
  private final LongSupplier nanoTime;
  private final OutageLog outages;
  private Optional<SpiLink> link = Optional.empty();
  private Optional<Long> failedNanos = Optional.empty();
  private Fault failure = Fault.DEVICE_GONE;
  private String state = "not looked at yet";
  private long readable;
  private long failed;

  /** A MAX31855 of that letter on {@code /dev/spidevBUS.CHIPSELECT}, at the usual clock. */
  public static Source max31855(String probe, ThermocoupleType type, int bus, int chipSelect) {
    return new SpiSource(
        probe, new SpiSettings(bus, chipSelect, SpiSettings.DEFAULT_CLOCK_HZ, type));
  }

  /** Opens nothing yet; the first look does. */
  public SpiSource(String probe, SpiSettings settings) {
    this(probe, settings, () -> LinuxSpiLink.open(settings), System::nanoTime);
  }

  SpiSource(String probe, SpiSettings settings, SpiLink.Opener opener, LongSupplier nanoTime) {
    this.probe = probe;
    this.settings = settings;
    this.opener = opener;
    this.nanoTime = nanoTime;
    this.outages = new OutageLog(LoggerFactory.getLogger(SpiSource.class), probe);
  }

  /** The chip converts in 70 to 100 ms (MAX31855, data sheet 19-5793). */
  @Override
  public Duration pace() {
    return Duration.ofMillis(100);
  }

  @Override
  public Optional<Reading> read(Moment at) {
    long now = nanoTime.getAsLong();
    Reading reading = look(at, now);
    if (reading instanceof Reading.Faulty faulty && isOutage(faulty.fault())) {
      outages.notHeard(faulty.fault(), describe(), now);
    } else {
      outages.heard(now);
    }
    return Optional.of(reading);
  }

  private Reading look(Moment at, long now) {
    if (link.isEmpty() && isDue(now)) {
      open(now);
    }
    byte[] frame = new byte[Max31855.FRAME_BYTES];
    if (link.isEmpty() || !receive(frame, now)) {
      return Reading.faulty(at, probe, failure);
    }
    Reading reading = Max31855.decode(frame, settings.type(), at, probe);
    readable++;
    state = reading instanceof Reading.Faulty faulty ? faulty.fault().plainly() : "reading";
    return reading;
  }

  private boolean isDue(long now) {
    return failedNanos.isEmpty() || now - failedNanos.get() >= RETRY_NANOS;
  }

  private void open(long now) {
    try {
      link = Optional.of(opener.open());
    } catch (IOException refused) {
      fail(Fault.DEVICE_GONE, refused, now);
    }
  }

  private boolean receive(byte[] frame, long now) {
    try {
      link.orElseThrow().receive(frame);
      return true;
    } catch (IOException failedTransfer) {
      failed++;
      letGo();
      fail(Fault.NO_ANSWER, failedTransfer, now);
      return false;
    }
  }

  private void fail(Fault fault, IOException why, long now) {
    failure = fault;
    failedNanos = Optional.of(now);
    state = fault.plainly() + " (" + why.getMessage() + ")";
  }

  /** Whether the bus is at fault, as against a fault that the chip reports of its thermocouple. */
  private static boolean isOutage(Fault fault) {
    return fault.silence() || fault == Fault.WIRING;
  }

  private void letGo() {
    Optional<SpiLink> old = link;
    // first, so that a link whose closing fails is not closed again
    link = Optional.empty();
    old.ifPresent(SpiLink::close);
  }

  @Override
  public String describe() {
    return String.format(
        Locale.ROOT,
        "MAX31855 type %s on %s: %s; frames: %d received, %d failed",
        settings.type(),
        settings.device(),
        state,
        readable,
        failed);
  }

  @Override
  public void close() {
    letGo();
  }
}
