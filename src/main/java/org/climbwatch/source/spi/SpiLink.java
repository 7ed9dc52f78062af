package org.climbwatch.source.spi;

import java.io.IOException;

/** An open SPI device: moves bytes and knows nothing of them. One thread owns it. */
public interface SpiLink extends AutoCloseable {
  /**
   * Clocks bytes out and as many in at the same time, in one transfer under one chip select.
   *
   * @param out what the chip is told; left as it is
   * @param in as long as {@code out}; filled by a transfer that succeeds, of no meaning after one
   *     that does not
   * @throws IOException when the transfer failed
   */
  void transfer(byte[] out, byte[] in) throws IOException;

  /** Lets go of the device. Called exactly once. */
  @Override
  void close();

  /** What chips can sit on: the machine's own buses, or emulated ones. */
  interface Buses {
    /** The way to a chip. Opens nothing yet. */
    Opener to(SpiSettings settings);

    /** The buses that this machine's Linux offers. */
    static Buses ofLinux() {
      return settings -> () -> LinuxSpiLink.open(settings);
    }
  }

  /** Opens a device, as often as it is needed again. */
  interface Opener {
    /**
     * Opens the device.
     *
     * @throws IOException when it can't be opened; the message says what, why and what to do
     */
    SpiLink open() throws IOException;
  }
}
