package org.climbwatch.signal;

/**
 * How the climb is taken from the readings.
 *
 * @param climbWindowSeconds seconds of readings that the shown climb rests on, 30 to 1800
 * @param fallWindowSeconds seconds for the quick look that a lost flame needs, 10 to 300
 * @param spikeC °C that a single reading may stand apart before it is taken for a spike, 2 to 200
 */
public record SignalSettings(double climbWindowSeconds, double fallWindowSeconds, double spikeC) {
  public static final SignalSettings DEFAULT = new SignalSettings(180, 45, 8);

  public SignalSettings {
    require(climbWindowSeconds, 30, 1800, "climbWindowSeconds");
    require(fallWindowSeconds, 10, 300, "fallWindowSeconds");
    require(spikeC, 2, 200, "spikeC");
  }

  private static void require(double value, double low, double high, String name) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          name + " must be " + low + " to " + high + ", was " + value);
    }
  }
}
