package org.climbwatch.source.spi;

import java.io.IOException;

/** An open SPI device: moves bytes and knows nothing of them. */
interface SpiLink extends AutoCloseable {
  /**
   * One transfer, chip select low throughout.
   *
   * @param bytes sent, and then holding what came back
   * @throws IOException when the bus did not carry it
   */
  void transfer(byte[] bytes) throws IOException;

  @Override
  void close();

  /** Opens a link, again and again where need be. */
  interface Opener {
    /**
     * @throws IOException when the device cannot be had; the message says why and what to do
     */
    SpiLink open() throws IOException;
  }
}
