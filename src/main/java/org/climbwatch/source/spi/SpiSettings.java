package org.climbwatch.source.spi;

import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * Where on the SPI buses a MAX31855 sits and which letter it is trimmed for.
 *
 * @param bus the B of {@code /dev/spidevB.C}, 0 to 6
 * @param chipSelect the C of {@code /dev/spidevB.C}, 0 to 2
 * @param clockHz 100 000 to 5 000 000 Hz; slow is right for wires longer than a hand
 * @param type letter that the chip was bought for; any but B. It can't be read from the chip
 */
public record SpiSettings(int bus, int chipSelect, int clockHz, ThermocoupleType type) {
  public static final int DEFAULT_CLOCK_HZ = 500_000;

  /** Highest that Pi4J 2.8 can address. */
  private static final int MOST_BUS = 6;

  private static final int MOST_CHIP_SELECT = 2;

  private static final int LEAST_CLOCK_HZ = 100_000;

  /** MAX31855 data sheet 19-5793 Rev 5, serial interface timing. */
  private static final int MOST_CLOCK_HZ = 5_000_000;

  public SpiSettings {
    require(bus, 0, MOST_BUS, "bus");
    require(chipSelect, 0, MOST_CHIP_SELECT, "chipSelect");
    require(clockHz, LEAST_CLOCK_HZ, MOST_CLOCK_HZ, "clockHz");
    Max31855.slopeUvPerC(type);
  }

  /** The device file, for instance {@code /dev/spidev0.0}. */
  public String device() {
    return "/dev/spidev" + bus + "." + chipSelect;
  }

  private static void require(int value, int least, int most, String name) {
    if (value < least || value > most) {
      throw new IllegalArgumentException(
          name + " must be " + least + " to " + most + ", was " + value);
    }
  }
}
