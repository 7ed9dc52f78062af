package org.climbwatch.signal;

/**
 * Steps that no kiln makes: level, then far off from one reading to the next, then level again; and
 * faults that come and go. A loose screw does so.
 *
 * <p>A burner turned up or a lid lifted moves even a bare couple over several readings, for the
 * couple has to follow; a spark comes back at once. Neither is level on both sides.
 */
final class Jumps {
  /** °C from one reading to the next. */
  private static final double LEAST_C = 25;

  /** How far the readings on either side may stray: a share of the step, and °C beside. */
  private static final double STRAY = 0.1;

  private static final double STRAY_C = 1;
  private static final int LEVEL = 3;
  private static final int SEEN = 2 * LEVEL;

  /** ms from the first to the last of the readings that a step is seen in. */
  private static final long LONGEST_MILLIS = 60_000;

  /** ms for which a jump is remembered. */
  private static final long REMEMBERED_MILLIS = 900_000;

  private static final int MOST_REMEMBERED = 32;

  /** A single faulty reading may be a spark's. */
  private static final int LEAST_FAULTS = 2;

  private final long[] seenMillis = new long[SEEN];
  private final double[] seenC = new double[SEEN];
  private int seen;
  private final long[] atMillis = new long[MOST_REMEMBERED];
  private final double[] sizeC = new double[MOST_REMEMBERED];
  private int oldest;
  private int size;
  private int faults;

  void reset() {
    seen = 0;
    size = 0;
    faults = 0;
  }

  /** Takes a temperature, spikes among them; answers whether it completes a step. */
  boolean add(long millis, double celsius) {
    forgetOld(millis);
    if (faults >= LEAST_FAULTS) {
      remember(millis, 0);
    }
    faults = 0;
    if (seen == SEEN) {
      System.arraycopy(seenMillis, 1, seenMillis, 0, SEEN - 1);
      System.arraycopy(seenC, 1, seenC, 0, SEEN - 1);
      seen--;
    }
    seenMillis[seen] = millis;
    seenC[seen] = celsius;
    seen++;
    if (seen < SEEN || !isStep()) {
      return false;
    }
    remember(millis, seenC[LEVEL] - seenC[LEVEL - 1]);
    return true;
  }

  /** Takes a look without a temperature. */
  void fault() {
    faults++;
    seen = 0;
  }

  /** °C, the newest step with its sign; 0 of faults, and when there is none. */
  double newestC() {
    return size == 0 ? 0 : sizeC[(oldest + size - 1) % MOST_REMEMBERED];
  }

  /** How many in the last quarter of an hour. */
  int count() {
    return size;
  }

  /** Whether there were steps up and down, or faults between. */
  boolean comeAndGo() {
    boolean up = false;
    boolean down = false;
    for (int i = 0; i < size; i++) {
      double step = sizeC[(oldest + i) % MOST_REMEMBERED];
      up |= step >= 0;
      down |= step <= 0;
    }
    return up && down;
  }

  /** °C, the largest step without its sign; 0 when there were only faults. */
  double largestC() {
    double largest = 0;
    for (int i = 0; i < size; i++) {
      largest = Math.max(largest, Math.abs(sizeC[(oldest + i) % MOST_REMEMBERED]));
    }
    return largest;
  }

  private boolean isStep() {
    double step = Math.abs(seenC[LEVEL] - seenC[LEVEL - 1]);
    return step >= LEAST_C
        && seenMillis[SEEN - 1] - seenMillis[0] <= LONGEST_MILLIS
        && strayC(0) <= STRAY * step + STRAY_C
        && strayC(LEVEL) <= STRAY * step + STRAY_C;
  }

  private double strayC(int from) {
    return Spread.of(seenC, from, LEVEL);
  }

  private void remember(long millis, double stepC) {
    if (size == MOST_REMEMBERED) {
      oldest = (oldest + 1) % MOST_REMEMBERED;
      size--;
    }
    int place = (oldest + size) % MOST_REMEMBERED;
    atMillis[place] = millis;
    sizeC[place] = stepC;
    size++;
  }

  private void forgetOld(long millis) {
    while (size > 0 && millis - atMillis[oldest] > REMEMBERED_MILLIS) {
      oldest = (oldest + 1) % MOST_REMEMBERED;
      size--;
    }
  }
}
