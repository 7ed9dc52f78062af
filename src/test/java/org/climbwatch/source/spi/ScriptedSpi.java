package org.climbwatch.source.spi;

import java.io.IOException;
import org.climbwatch.source.SourceContract;

/**
 * A bus with an emulated chip on it, as far as a test can have one. Strict: one link open at a
 * time, closed exactly once, and not used after that.
 */
final class ScriptedSpi implements SpiLink.Opener, SourceContract.Device {
  private final ChipEmulator chip;
  private boolean pluggedIn = true;
  private boolean answers;
  private boolean held;
  private int openings;

  ScriptedSpi(ChipEmulator chip) {
    this.chip = chip;
  }

  /** The bus carries transfers from now on, whatever the chip says in them. */
  void carries() {
    answers = true;
  }

  @Override
  public void gives(double emfMv, double coldJunctionC) {
    chip.senses(emfMv, coldJunctionC);
    answers = true;
  }

  @Override
  public void reportsOpenCircuit() {
    chip.losesCouple();
    answers = true;
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
    public void transfer(byte[] out, byte[] in) throws IOException {
      if (!open) {
        throw new AssertionError("used after it was closed");
      }
      if (out.length != in.length) {
        throw new AssertionError("as much comes in as goes out");
      }
      if (!pluggedIn || !answers) {
        throw new IOException("/dev/spidev0.0 did not carry out a transfer");
      }
      System.arraycopy(chip.transfer(out), 0, in, 0, in.length);
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
