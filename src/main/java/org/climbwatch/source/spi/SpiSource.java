package org.climbwatch.source.spi;

import java.io.IOException;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.OutageLog;
import org.climbwatch.source.Source;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.slf4j.LoggerFactory;

/** A MAX31855 on the bus: each read is one transfer. A lost device is tried again. */
public final class SpiSource implements Source {
  private static final long RETRY_MILLIS = 5000;

  private final String probe;
  private final ThermocoupleType type;
  private final String device;
  private final SpiLink.Opener opener;
  private final OutageLog outages;
  private SpiLink link;
  private long openAgainAtMillis = Long.MIN_VALUE;
  private Optional<String> trouble = Optional.empty();
  private Fault lastFault = Fault.DEVICE_GONE;
  private long frames;

  SpiSource(String probe, ThermocoupleType type, String device, SpiLink.Opener opener) {
    this.probe = probe;
    this.type = type;
    this.device = device;
    this.opener = opener;
    outages = new OutageLog(LoggerFactory.getLogger(SpiSource.class), probe);
  }

  /** A MAX31855 of that letter on /dev/spidevBUS.CHIPSELECT. */
  public static Source max31855(String probe, ThermocoupleType type, int bus, int chipSelect) {
    return new SpiSource(
        probe,
        type,
        "MAX31855 on /dev/spidev" + bus + "." + chipSelect,
        () -> LinuxSpiLink.open(bus, chipSelect));
  }

  @Override
  public Optional<Reading> read(Moment at) {
    if (link == null && at.millis() < openAgainAtMillis) {
      return Optional.of(Reading.faulty(at, probe, lastFault));
    }
    try {
      if (link == null) {
        link = opener.open();
      }
      byte[] bytes = new byte[Max31855.FRAME_BYTES];
      link.transfer(bytes);
      frames++;
      trouble = Optional.empty();
      outages.heard(System.nanoTime());
      return Optional.of(Max31855.reading(at, probe, type, bytes));
    } catch (IOException notHad) {
      return Optional.of(lost(at, notHad));
    }
  }

  @Override
  public String describe() {
    return device + trouble.map(why -> ": " + why).orElse(", " + frames + " frames");
  }

  @Override
  public void close() {
    if (link != null) {
      link.close();
      link = null;
    }
  }

  /** Never there is gone; there and not carrying is no answer. */
  private Reading lost(Moment at, IOException why) {
    lastFault = link == null ? Fault.DEVICE_GONE : Fault.NO_ANSWER;
    trouble = Optional.of("" + why.getMessage());
    close();
    openAgainAtMillis = at.millis() + RETRY_MILLIS;
    outages.notHeard(lastFault, trouble.get(), System.nanoTime());
    return Reading.faulty(at, probe, lastFault);
  }
}
