package org.climbwatch.journal;

/**
 * Reduces a curve to a number of points that keep every peak: of each slice of time the lowest and
 * the highest, at their own times, and a gap between two kept points wherever one was.
 */
final class CurveReduction {
  /** Fewer are no curve. */
  static final int FEWEST = 8;

  /** More than any screen has columns. */
  static final int MOST = 20_000;

  private final long[] elapsedMs;
  private final double[] temperatureC;
  private final long sliceMs;
  private final CurvePoints kept = new CurvePoints();

  private int newestKept;
  private int lowest = -1;
  private int highest = -1;

  private CurveReduction(Curve full, int points) {
    this.elapsedMs = full.elapsedMs();
    this.temperatureC = full.temperatureC();
    long spanMs = elapsedMs[elapsedMs.length - 1] - elapsedMs[0];
    this.sliceMs = spanMs / slices(full, points) + 1;
  }

  /**
   * The same curve with at most so many points.
   *
   * @throws IllegalArgumentException when the number is not 8 to 20 000
   */
  static Curve reduce(Curve full, int points) {
    if (points < FEWEST || points > MOST) {
      throw new IllegalArgumentException(
          "points must be " + FEWEST + " to " + MOST + ", was " + points);
    }
    return full.points() <= points ? full : new CurveReduction(full, points).run();
  }

  /**
   * Two points a slice, and the first and the last of all; before each of them there may be a gap,
   * but there are never more gaps than the curve has.
   */
  private static int slices(Curve full, int points) {
    int gaps = 0;
    for (double value : full.temperatureC()) {
      gaps += Double.isNaN(value) ? 1 : 0;
    }
    return Math.max((points - 2 - gaps) / 2, (points - 4) / 4);
  }

  private Curve run() {
    int last = elapsedMs.length - 1;
    kept.add(elapsedMs[0], temperatureC[0]);
    long slice = 0;
    for (int i = 1; i < last; i++) {
      long inSlice = (elapsedMs[i] - elapsedMs[0]) / sliceMs;
      if (inSlice != slice) {
        finishSlice();
        slice = inSlice;
      }
      take(i);
    }
    finishSlice();
    keep(last);
    return kept.curve();
  }

  private void take(int i) {
    if (!Double.isNaN(temperatureC[i])) {
      lowest = lowest < 0 || temperatureC[i] < temperatureC[lowest] ? i : lowest;
      highest = highest < 0 || temperatureC[i] > temperatureC[highest] ? i : highest;
    }
  }

  private void finishSlice() {
    if (lowest >= 0) {
      keep(Math.min(lowest, highest));
      if (lowest != highest) {
        keep(Math.max(lowest, highest));
      }
    }
    lowest = -1;
    highest = -1;
  }

  private void keep(int i) {
    for (int between = newestKept + 1; between < i; between++) {
      if (Double.isNaN(temperatureC[between])) {
        kept.add(elapsedMs[between], Double.NaN);
        break;
      }
    }
    kept.add(elapsedMs[i], temperatureC[i]);
    newestKept = i;
  }
}
