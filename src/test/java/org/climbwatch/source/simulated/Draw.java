package org.climbwatch.source.simulated;

/** Numbers drawn one after the other from a seed, the same on every machine. */
final class Draw {
  private final long seed;
  private final int stream;
  private long drawn;

  Draw(long seed, int stream) {
    this.seed = seed;
    this.stream = stream;
  }

  double even() {
    return Hash.even(seed, stream, drawn++);
  }

  double between(double low, double high) {
    return low + (high - low) * even();
  }

  /** Even in the logarithm: as often from 1 to 2 as from 2 to 4. */
  double logBetween(double low, double high) {
    return low * StrictMath.pow(high / low, even());
  }

  boolean chance(double share) {
    return even() < share;
  }

  int below(int end) {
    return (int) (even() * end);
  }
}
