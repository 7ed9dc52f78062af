package org.climbwatch.alarm;

import java.time.Duration;

/**
 * How long a condition must hold before its alarm is raised, and be gone before it returns.
 *
 * @param on on-delay, 0 to 2 hours
 * @param off off-delay, 0 to 2 hours
 */
public record Delays(Duration on, Duration off) {
  public static final Duration LONGEST = Duration.ofHours(2);

  public Delays {
    require(on, "on-delay");
    require(off, "off-delay");
  }

  /** Delays in whole seconds. */
  public static Delays ofSeconds(long on, long off) {
    return new Delays(Duration.ofSeconds(on), Duration.ofSeconds(off));
  }

  private static void require(Duration delay, String name) {
    if (delay.isNegative() || delay.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException(name + " must be 0 to 7200 s, was " + delay);
    }
  }
}
