package org.climbwatch.source.simulated;

/**
 * Chance without a state: a number follows from seed, stream and tick alone, so a model that is
 * asked seldom and one that is asked often see the same noise, on every machine.
 *
 * <p>The mixing steps are those of SplitMix64 (Steele, Lea and Flood 2014).
 */
final class Hash {
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  private Hash() {}

  /** Evenly from 0 to 1, below 1. */
  static double even(long seed, int stream, long tick) {
    return (bits(seed, stream, tick) >>> 11) * 0x1.0p-53;
  }

  /** Nearly normal with mean 0 and spread 1, never beyond 3.5: the sum of four even ones. */
  static double normal(long seed, int stream, long tick) {
    long bits = bits(seed, stream, tick);
    long sum =
        (bits & 0xFFFF) + (bits >>> 16 & 0xFFFF) + (bits >>> 32 & 0xFFFF) + (bits >>> 48 & 0xFFFF);
    // spread of four even numbers from 0 to 1: sqrt(4 / 12)
    return (sum / 65536.0 - 2) * 1.7320508;
  }

  private static long bits(long seed, int stream, long tick) {
    return mixed(mixed(seed + GOLDEN * stream) + GOLDEN * tick);
  }

  private static long mixed(long value) {
    long z = value + GOLDEN;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
