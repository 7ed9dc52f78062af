package org.climbwatch.source.spi;

import java.nio.ByteBuffer;

/** A MAX31855 for Type K; strict: asked for nothing but whole frames. */
public final class Max31855Emulator implements ChipEmulator {
  private int frame;

  void givesFrame(int newFrame) {
    frame = newFrame;
  }

  @Override
  public void senses(double emfMv, double coldJunctionC) {
    long hot = Math.round((emfMv * 1000 / 41.276 + coldJunctionC) * 4);
    long cold = Math.round(coldJunctionC * 16);
    frame = (int) hot << 18 | (int) (cold & 0xFFF) << 4;
  }

  /** Table 2 of the data sheet: F and SCG. */
  void touchesGround() {
    frame = 0x7FFD_1902;
  }

  /** F and SCV. */
  void touchesSupply() {
    frame = 0x7FFD_1904;
  }

  @Override
  public void losesCouple() {
    frame = 0x7FFD_1901;
  }

  @Override
  public byte[] transfer(byte[] out) {
    if (out.length != 4) {
      throw new AssertionError("a frame has 4 bytes; asked for " + out.length);
    }
    return ByteBuffer.allocate(4).putInt(frame).array();
  }
}
