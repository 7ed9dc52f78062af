package org.climbwatch.reading;

/**
 * A point in monotonic time: which boot of the machine, and milliseconds since that boot.
 *
 * <p>Moments of different boots are ordered but no duration lies between them: wall time, which
 * alone spans boots, belongs to the edges.
 *
 * @param boot ordinal of the machine's boot as the journal counts them, from 0
 * @param millis monotonic milliseconds since that boot
 */
public record Moment(int boot, long millis) implements Comparable<Moment> {
  public Moment {
    if (boot < 0) {
      throw new IllegalArgumentException("boot must be 0 or more, was " + boot);
    }
  }

  /**
   * Milliseconds from an earlier moment of the same boot to this one.
   *
   * @throws IllegalArgumentException when the two are of different boots
   */
  public long millisSince(Moment earlier) {
    if (earlier.boot != boot) {
      throw new IllegalArgumentException(
          "no duration lies between boots " + earlier.boot + " and " + boot);
    }
    return millis - earlier.millis;
  }

  /** Whether a duration lies between this moment and another. */
  public boolean sameBoot(Moment other) {
    return boot == other.boot;
  }

  /** This moment moved by some milliseconds within its boot. */
  public Moment plusMillis(long more) {
    return new Moment(boot, millis + more);
  }

  @Override
  public int compareTo(Moment other) {
    int byBoot = Integer.compare(boot, other.boot);
    return byBoot != 0 ? byBoot : Long.compare(millis, other.millis);
  }
}
