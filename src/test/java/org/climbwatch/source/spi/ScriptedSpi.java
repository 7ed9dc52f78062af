package org.climbwatch.source.spi;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.climbwatch.source.SourceContract;

/**
 * A MAX31855 with Type K on a bus, as far as a test can have one. Strict: one link open at a time,
 * closed exactly once, not used after that, and asked for nothing but whole frames.
 */
final class ScriptedSpi implements SpiLink.Opener, SourceContract.Device {
  private boolean pluggedIn = true;
  private boolean answers;
  private int frame;
  private boolean held;
  private int openings;

  void givesFrame(int newFrame) {
    frame = newFrame;
    answers = true;
  }

  @Override
  public void gives(double emfMv, double coldJunctionC) {
    long hot = Math.round((emfMv * 1000 / 41.276 + coldJunctionC) * 4);
    long cold = Math.round(coldJunctionC * 16);
    givesFrame((int) hot << 18 | (int) (cold & 0xFFF) << 4);
  }

  @Override
  public void reportsOpenCircuit() {
    givesFrame(0x7FFD_1901);
  }

  @Override
  public void fallsSilent() {
    answers = false;
  }

  @Override
  public void unplug() {
    pluggedIn = false;
  }

  @Override
  public void replug() {
    pluggedIn = true;
  }

  int openings() {
    return openings;
  }

  void assertLetGo() {
    if (held) {
      throw new AssertionError("the link was left open");
    }
  }

  @Override
  public SpiLink open() throws IOException {
    if (held) {
      throw new AssertionError("opened a second time while open");
    }
    openings++;
    if (!pluggedIn) {
      throw new IOException("/dev/spidev0.0 is not there");
    }
    held = true;
    return new Link();
  }

  private final class Link implements SpiLink {
    private boolean open = true;

    @Override
    public void receive(byte[] into) throws IOException {
      if (!open) {
        throw new AssertionError("used after it was closed");
      }
      if (into.length != 4) {
        throw new AssertionError("a frame has 4 bytes; asked for " + into.length);
      }
      if (!pluggedIn || !answers) {
        throw new IOException("/dev/spidev0.0 did not carry out a transfer");
      }
      ByteBuffer.wrap(into).putInt(frame);
    }

    @Override
    public void close() {
      if (!open) {
        throw new AssertionError("closed twice");
      }
      open = false;
      held = false;
    }
  }
}
