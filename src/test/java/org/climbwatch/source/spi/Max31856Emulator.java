package org.climbwatch.source.spi;

import java.util.function.LongSupplier;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;

/** A MAX31856 by its register map, data sheet 19-7534 Rev 0; Type K and voltages only. */
public final class Max31856Emulator implements ChipEmulator {
  private static final int[] POWER_ON = {
    0x00, 0x03, 0xFF, 0x7F, 0xC0, 0x7F, 0xFF, 0x80, 0x00, 0x00, 0, 0, 0, 0, 0, 0
  };

  /** Typical, 50 Hz: the first automatic or a one-shot; later automatic ones. */
  private static final long FIRST_NANOS = 169_000_000L;

  private static final long LATER_NANOS = 98_000_000L;

  private final LongSupplier nanoTime;
  private final int[] registers = POWER_ON.clone();
  private boolean hearsNothing;
  private double emfMv;
  private double coldJunctionC = 25;
  private int faults;
  private long dueNanos;
  private int conversions;

  Max31856Emulator(LongSupplier nanoTime) {
    this.nanoTime = nanoTime;
  }

  @Override
  public void senses(double newEmfMv, double newColdJunctionC) {
    emfMv = newEmfMv;
    coldJunctionC = newColdJunctionC;
    faults = 0;
  }

  @Override
  public void losesCouple() {
    faults = 0x01;
  }

  /** An input beyond the supply: conversions rest, only the bit tells. */
  void isOverdriven() {
    faults = 0x02;
  }

  /** The supply fails for a moment. */
  void brownsOut() {
    System.arraycopy(POWER_ON, 0, registers, 0, registers.length);
  }

  /** The MOSI wire is off. */
  void hearsNothing() {
    hearsNothing = true;
  }

  int register(int address) {
    return registers[address];
  }

  int conversions() {
    return conversions;
  }

  @Override
  public byte[] transfer(byte[] out) {
    convertUntilNow();
    byte[] in = new byte[out.length];
    in[0] = (byte) 0xA5; // what comes in beside the address means nothing
    int address = hearsNothing ? 0 : out[0] & 0x7F;
    boolean write = !hearsNothing && (out[0] & 0x80) != 0;
    for (int i = 1; i < out.length; i++, address++) {
      if (write) {
        in[i] = 0;
        write(address, out[i] & 0xFF);
      } else {
        in[i] = (byte) (address < 16 ? registers[address] : 0xFF);
      }
    }
    return in;
  }

  private void write(int address, int value) {
    if (address > 0x09) {
      return; // read-only, the cold junction's sensor being on
    }
    boolean converting = (registers[0] & 0xC0) != 0;
    if (address == 0 && converting && ((registers[0] ^ value) & 1) != 0) {
      throw new AssertionError("the filter may be changed only with conversions off");
    }
    boolean begins = address == 0 && (value & 0xC0) != 0 && !converting;
    registers[address] = value;
    if (begins) {
      dueNanos = nanoTime.getAsLong() + FIRST_NANOS;
    }
  }

  private void convertUntilNow() {
    registers[15] = registers[15] & ~0x03 | faults;
    boolean converting = (registers[0] & 0xC0) != 0;
    if (!converting || (faults & 0x02) != 0 || nanoTime.getAsLong() - dueNanos < 0) {
      return;
    }
    convert();
    registers[0] &= ~0x40;
    dueNanos = nanoTime.getAsLong() + LATER_NANOS;
  }

  private void convert() {
    conversions++;
    double offsetC = (byte) registers[9] * 0.0625;
    int cold = (int) Math.round((coldJunctionC + offsetC) * 64) << 2;
    registers[10] = cold >> 8 & 0xFF;
    registers[11] = cold & 0xFF;
    int code = (registers[1] & 0x08) != 0 ? voltageCode() : temperatureCode(offsetC);
    int left = (code + conversions % 2) << 5;
    registers[12] = left >> 16 & 0xFF;
    registers[13] = left >> 8 & 0xFF;
    registers[14] = left & 0xFF;
  }

  private int voltageCode() {
    int gain = (registers[1] & 0x04) != 0 ? 32 : 8;
    return (int) Math.round(gain * 1.6 * 131072 * emfMv / 1000);
  }

  private int temperatureCode(double offsetC) {
    double hotC = ColdJunction.hotJunctionC(ThermocoupleType.K, emfMv, coldJunctionC + offsetC);
    return (int) Math.round(hotC * 128);
  }
}
