package org.climbwatch.source.spi;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.OutageLog;
import org.climbwatch.source.Source;
import org.slf4j.LoggerFactory;

/**
 * A probe on an amplifier of an SPI bus, looked at anew at each call. A device that can't be
 * opened, or a transfer that failed, is tried again every few seconds. A chip that has settings is
 * given them at each opening, and again whenever an answer shows that they are gone.
 *
 * <p>A call that comes sooner than the chip can have anything new gives nothing where a look would
 * spoil the running conversion.
 */
public final class SpiSource implements Source {
  static final long RETRY_NANOS = 5_000_000_000L;

  /** So that a call a little early by the clock's grain still finds a finished conversion. */
  private static final Duration GRAIN = Duration.ofMillis(5);

  private final String probe;
  private final SpiSettings settings;
  private final SpiLink.Opener opener;
  private final LongSupplier nanoTime;
  private final OutageLog outages;
  private final Standstill standstill;
  private Chip.Talk talk;
  private Optional<SpiLink> link = Optional.empty();
  private Optional<Long> failedNanos = Optional.empty();
  private Fault failure = Fault.DEVICE_GONE;
  private boolean isSetUp;

  /** What stands in the reading's place while a chip that was in trouble settles anew. */
  private Optional<Fault> standing = Optional.empty();

  private long waitSinceNanos;
  private long waitNanos;
  private String state = "not looked at yet";
  private long readable;
  private long failed;
  private long settingsLost;

  /** Opens nothing yet; the first look does. */
  public SpiSource(String probe, SpiSettings settings, SpiLink.Buses buses) {
    this(probe, settings, buses.to(settings), System::nanoTime);
  }

  SpiSource(String probe, SpiSettings settings, SpiLink.Opener opener, LongSupplier nanoTime) {
    this.probe = probe;
    this.settings = settings;
    this.opener = opener;
    this.nanoTime = nanoTime;
    this.outages = new OutageLog(LoggerFactory.getLogger(SpiSource.class), probe);
    this.standstill = new Standstill(settings.chip());
    this.talk = settings.chip().talk(probe);
  }

  /** How far apart looks should be to see each conversion once. */
  @Override
  public Duration pace() {
    return settings.chip().conversion().plus(GRAIN);
  }

  @Override
  public Optional<Reading> read(Moment at) {
    long now = nanoTime.getAsLong();
    Optional<Reading> reading = look(at, now);
    if (reading.isEmpty()) {
      return reading;
    }
    if (reading.get() instanceof Reading.Faulty faulty && isOutage(faulty.fault())) {
      outages.notHeard(faulty.fault(), describe(), now);
    } else {
      outages.heard(now);
    }
    return reading;
  }

  private Optional<Reading> look(Moment at, long now) {
    if (link.isEmpty() && isDue(now)) {
      open(now);
    }
    if (link.isEmpty()) {
      return Optional.of(Reading.faulty(at, probe, failure));
    }
    try {
      if (!isSetUp) {
        setUp();
      }
      // anew, for setting up has taken time
      if (nanoTime.getAsLong() - waitSinceNanos < waitNanos) {
        return standing.map(fault -> Reading.faulty(at, probe, fault));
      }
      byte[] answer = exchange(talk.look());
      await(settings.chip().rest());
      return heard(talk.take(answer, at), at, now);
    } catch (IOException failedTransfer) {
      failed++;
      letGo();
      fail(Fault.NO_ANSWER, failedTransfer, now);
      return Optional.of(Reading.faulty(at, probe, failure));
    }
  }

  private boolean isDue(long now) {
    return failedNanos.isEmpty() || now - failedNanos.get() >= RETRY_NANOS;
  }

  private void open(long now) {
    try {
      link = Optional.of(opener.open());
      talk = settings.chip().talk(probe);
      isSetUp = false;
    } catch (IOException refused) {
      fail(Fault.DEVICE_GONE, refused, now);
    }
  }

  private void setUp() throws IOException {
    exchange(talk.setUp());
    isSetUp = true;
    await(settings.chip().settling());
  }

  /**
   * From the end of the exchange, by which the chip has begun: a busy machine may have left this
   * thread lying since it last looked at the clock, and a result that is fetched too soon is the
   * one before it, of the sensor in place of the couple or the other way round.
   */
  private void await(Duration time) {
    waitSinceNanos = nanoTime.getAsLong();
    waitNanos = time.toNanos();
  }

  /** What the first transfer brought in. */
  private byte[] exchange(List<byte[]> transfers) throws IOException {
    byte[] first = {};
    for (byte[] out : transfers) {
      byte[] in = new byte[out.length];
      link.orElseThrow().transfer(out, in);
      first = first.length == 0 ? in : first;
    }
    return first;
  }

  private Optional<Reading> heard(Chip.Answer answer, Moment at, long now) throws IOException {
    readable++;
    Optional<Reading> reading = answer.reading();
    if (reading.isEmpty()) {
      return reading;
    }
    String why = answer.settingsLost().map(lost -> " (" + lost + ")").orElse("");
    if (standstill.standsStill(reading.get(), now)) {
      why = " (not the least change for " + standstill.minutes(now) + " min; look at CS)";
      reading = Optional.of(Reading.faulty(at, probe, Fault.WIRING));
    }
    standing = reading.filter(Reading.Faulty.class::isInstance).map(SpiSource::fault);
    state = standing.map(Fault::plainly).orElse("reading") + why;
    if (answer.settingsLost().isPresent()) {
      settingsLost++;
      setUp();
    }
    return reading;
  }

  private static Fault fault(Reading reading) {
    return ((Reading.Faulty) reading).fault();
  }

  private void fail(Fault fault, IOException why, long now) {
    failure = fault;
    standing = Optional.of(fault);
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
    String again = settingsLost == 0 ? "" : ", set up again " + settingsLost + " times";
    return String.format(
        Locale.ROOT,
        "%s on %s: %s; frames: %d received, %d failed%s",
        settings.chip().name(),
        settings.device(),
        state,
        readable,
        failed,
        again);
  }

  @Override
  public void close() {
    letGo();
  }
}
