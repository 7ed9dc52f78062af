package org.climbwatch.source.spi;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiMode;
import com.pi4j.plugin.linuxfs.provider.spi.LinuxFsSpiProvider;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** An SPI device of Linux, through Pi4J's file-based provider. */
final class LinuxSpiLink implements SpiLink {
  private static final Logger LOG = LoggerFactory.getLogger(LinuxSpiLink.class);

  private final Context context;
  private final Spi spi;
  private final String device;

  private LinuxSpiLink(Context context, Spi spi, String device) {
    this.context = context;
    this.spi = spi;
    this.device = device;
  }

  static SpiLink open(SpiSettings settings) throws IOException {
    requireUsable(Path.of(settings.device()), System.getProperty("os.arch"));
    // a context of its own: Pi4J 2.8 has one set of addresses for all buses and pins of a context.
    // No hook: the owner closes, and each opening would add one.
    Context context = null;
    try {
      context =
          Pi4J.newContextBuilder()
              .disableShutdownHook()
              .add(LinuxFsSpiProvider.newInstance())
              .build();
      return new LinuxSpiLink(context, create(context, settings), settings.device());
    } catch (RuntimeException | LinkageError refused) {
      if (context != null) {
        context.shutdown();
      }
      throw new IOException(
          settings.device() + " can't be opened; does another program use it? (" + refused + ")",
          refused);
    }
  }

  private static Spi create(Context context, SpiSettings settings) {
    return context.create(
        Spi.newConfigBuilder(context)
            .id("climbwatch")
            .bus(settings.bus())
            .address(settings.chipSelect())
            .mode(SpiMode.getByNumber(settings.chip().spiMode()))
            .baud(settings.clockHz())
            .provider(LinuxFsSpiProvider.ID)
            .build());
  }

  /** What Pi4J reports without a reason is looked at first, so that the message can help. */
  static void requireUsable(Path device, String architecture) throws IOException {
    if (!architecture.endsWith("64")) {
      // on 32-bit ARM the request numbers of the bus reach the kernel garbled
      throw new IOException(
          device + " needs a 64-bit system and Java; this Java is for " + architecture);
    }
    if (!Files.exists(device)) {
      throw new IOException(
          device
              + " is not there; put dtparam=spi=on into /boot/firmware/config.txt and start the Pi"
              + " again, or check bus and chip select");
    }
    if (!Files.isReadable(device) || !Files.isWritable(device)) {
      throw new IOException(device + " may not be opened by this user; add it to the group spi");
    }
  }

  @Override
  public void transfer(byte[] out, byte[] in) throws IOException {
    int count;
    try {
      count = spi.transfer(out, in);
    } catch (RuntimeException refused) {
      throw new IOException(device + " did not carry out a transfer", refused);
    }
    if (count != in.length) {
      throw new IOException(device + " did not carry out a transfer");
    }
  }

  @Override
  public void close() {
    try {
      // once only: a second close would close whatever file has got the same number by then
      spi.close();
      context.shutdown();
    } catch (RuntimeException refused) {
      LOG.warn("{} could not be closed cleanly", device, refused);
    }
  }
}
