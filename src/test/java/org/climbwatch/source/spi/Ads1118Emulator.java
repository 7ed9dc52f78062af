package org.climbwatch.source.spi;

import java.util.function.LongSupplier;

/** An ADS1118 by its configuration word, data sheet SBAS457F; the couple sits on AIN0 and AIN1. */
public final class Ads1118Emulator implements ChipEmulator {
  private static final double[] FULL_SCALE_MV = {6144, 4096, 2048, 1024, 512, 256, 256, 256};
  private static final int[] RATE = {8, 16, 32, 64, 128, 250, 475, 860};

  private final LongSupplier nanoTime;
  private int configuration = 0x058B;
  private int conversion;
  private int running;
  private boolean busy;
  private long dueNanos;
  private double emfMv;
  private double coldJunctionC = 25;
  private boolean open;
  private int conversions;

  Ads1118Emulator(LongSupplier nanoTime) {
    this.nanoTime = nanoTime;
  }

  @Override
  public void senses(double newEmfMv, double newColdJunctionC) {
    emfMv = newEmfMv;
    coldJunctionC = newColdJunctionC;
    open = false;
  }

  /** With resistors to supply and ground. */
  @Override
  public void losesCouple() {
    open = true;
  }

  int conversions() {
    return conversions;
  }

  @Override
  public byte[] transfer(byte[] out) {
    if (out.length != 4) {
      throw new AssertionError("a cycle has 32 clocks here; asked for " + out.length * 8);
    }
    finish();
    int word = (out[0] & 0xFF) << 8 | out[1] & 0xFF;
    int result = conversion;
    if ((word & 0x06) == 0x02) {
      take(word);
    }
    return new byte[] {
      (byte) (result >> 8), (byte) result, (byte) (configuration >> 8), (byte) configuration
    };
  }

  private void take(int word) {
    configuration = word & 0x7FFF | 1;
    if ((word & 0x8000) != 0 && !busy) {
      busy = true;
      running = configuration;
      // its clock may be 10 % slow
      dueNanos = nanoTime.getAsLong() + (long) (1e9 / (0.9 * RATE[word >> 5 & 7]));
    }
  }

  private void finish() {
    if (busy && nanoTime.getAsLong() - dueNanos >= 0) {
      busy = false;
      conversions++;
      conversion = (running & 0x10) != 0 ? sensor() : signal();
    }
  }

  private int sensor() {
    return (int) Math.round(coldJunctionC * 32) << 2;
  }

  private int signal() {
    if (open) {
      return 0x7FFF;
    }
    if ((running >> 12 & 7) != 0) {
      return 0; // nothing is wired there
    }
    double step = FULL_SCALE_MV[running >> 9 & 7] / 32768;
    // a step of noise now and then
    long code = Math.round(emfMv / step) + (conversions / 8) % 2;
    return (int) Math.max(-0x8000, Math.min(0x7FFF, code));
  }
}
