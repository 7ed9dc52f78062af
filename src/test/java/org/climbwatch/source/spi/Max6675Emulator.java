package org.climbwatch.source.spi;

import java.util.function.LongSupplier;

/** A MAX6675: a transfer stops the running conversion and begins the next, of 0.22 s. */
public final class Max6675Emulator implements ChipEmulator {
  private static final long CONVERSION_NANOS = 220_000_000L;

  private final LongSupplier nanoTime;
  private long begunNanos;
  private int sensed;
  private int converted;

  Max6675Emulator(LongSupplier nanoTime) {
    this.nanoTime = nanoTime;
    begunNanos = nanoTime.getAsLong() - CONVERSION_NANOS;
  }

  @Override
  public void senses(double emfMv, double coldJunctionC) {
    long code = Math.round((emfMv * 1000 / 41 + coldJunctionC) * 4);
    sensed = (int) Math.max(0, Math.min(0xFFF, code)) << 3;
  }

  @Override
  public void losesCouple() {
    sensed = 1 << 2;
  }

  @Override
  public byte[] transfer(byte[] out) {
    if (out.length != 2) {
      throw new AssertionError("a frame has 2 bytes; asked for " + out.length);
    }
    if (nanoTime.getAsLong() - begunNanos >= CONVERSION_NANOS) {
      converted = sensed;
    }
    begunNanos = nanoTime.getAsLong();
    return new byte[] {(byte) (converted >> 8), (byte) converted};
  }
}
