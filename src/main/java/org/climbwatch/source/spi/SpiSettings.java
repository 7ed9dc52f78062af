package org.climbwatch.source.spi;

/**
 * Where on the SPI buses an amplifier sits, and which one it is.
 *
 * @param bus the B of {@code /dev/spidevB.C}, 0 to 6
 * @param chipSelect the C of {@code /dev/spidevB.C}, 0 to 2
 * @param clockHz 100 000 Hz to what the chip stands; slow is right for wires longer than a hand
 * @param chip with its own settings
 */
public record SpiSettings(int bus, int chipSelect, int clockHz, Chip chip) {
  public static final int DEFAULT_CLOCK_HZ = 500_000;

  public static final int LEAST_CLOCK_HZ = 100_000;

  /** Highest that Pi4J 2.8 can address. */
  public static final int MOST_BUS = 6;

  public static final int MOST_CHIP_SELECT = 2;

  public SpiSettings {
    require(bus, 0, MOST_BUS, "bus");
    require(chipSelect, 0, MOST_CHIP_SELECT, "chipSelect");
    require(clockHz, LEAST_CLOCK_HZ, chip.mostClockHz(), "clockHz");
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
