package org.climbwatch.source.spi;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiChipSelect;
import com.pi4j.io.spi.SpiMode;
import com.pi4j.plugin.linuxfs.provider.spi.LinuxFsSpiProvider;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * SPI through Pi4J's linuxfs provider.
 *
 * <p>Each link has a context of its own, for Pi4J 2.8 keeps one set of addresses for all kinds of
 * I/O. The device is closed exactly once: its second close would shut whatever file has the same
 * number by then.
 */
final class LinuxSpiLink implements SpiLink {
  /** Hz; a MAX31855 takes 5 MHz, long wires do not. */
  private static final int CLOCK_HZ = 500_000;

  private static final String ID = "amplifier";

  private final Context context;
  private final Spi spi;
  private final Path device;

  private LinuxSpiLink(Context context, Spi spi, Path device) {
    this.context = context;
    this.spi = spi;
    this.device = device;
  }

  static SpiLink open(int bus, int chipSelect) throws IOException {
    Path device = Path.of("/dev/spidev" + bus + "." + chipSelect);
    // asked first: Pi4J tells neither a missing device from one without rights
    if (!Files.exists(device)) {
      throw new IOException(
          device + " is not there; enable the bus (raspi-config, Interface Options, SPI)");
    }
    if (!Files.isReadable(device) || !Files.isWritable(device)) {
      throw new IOException(device + " may not be used; add this user to the group spi");
    }
    if (!System.getProperty("os.arch").contains("64")) {
      throw new IOException("SPI needs a 64-bit system; install the 64-bit Raspberry Pi OS");
    }
    return opened(device, bus, chipSelect);
  }

  private static SpiLink opened(Path device, int bus, int chipSelect) throws IOException {
    Context context = Pi4J.newContextBuilder().add(LinuxFsSpiProvider.newInstance()).build();
    try {
      Spi spi =
          context.create(
              Spi.newConfigBuilder(context)
                  .id(ID)
                  .bus(bus)
                  .chipSelect(SpiChipSelect.getByNumber(chipSelect))
                  .mode(SpiMode.MODE_0)
                  .baud(CLOCK_HZ)
                  .provider("linuxfs-spi")
                  .build());
      return new LinuxSpiLink(context, spi, device);
    } catch (RuntimeException refused) {
      context.shutdown();
      throw new IOException(device + " cannot be opened: " + refused.getMessage(), refused);
    }
  }

  @Override
  public void transfer(byte[] bytes) throws IOException {
    int count = spi.transfer(bytes, bytes.length);
    if (count != bytes.length) {
      throw new IOException(device + " carried " + count + " of " + bytes.length + " bytes");
    }
  }

  @Override
  public void close() {
    spi.close();
    context.shutdown(ID);
    context.shutdown();
  }
}
