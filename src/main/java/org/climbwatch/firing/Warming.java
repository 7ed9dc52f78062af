package org.climbwatch.firing;

import java.util.Optional;
import org.climbwatch.reading.Moment;

/**
 * Recognises that a kiln at rest is being lit, and says where the warming began.
 *
 * <p>It began at the coldest reading of the last hour, leaning a little to later ones so that a
 * morning that warms the shed does not count. Warming is sure once two readings in a row stand
 * above it by the configured rise. What it says depends on nothing before that coldest reading, so
 * a recording that begins there gives the same answer.
 */
final class Warming {
  private static final long WINDOW_MILLIS = 3_600_000;
  private static final long SPACING_MILLIS = 20_000;
  private static final double LEAN_C_PER_HOUR = 6;

  private final Moment[] moments = new Moment[(int) (WINDOW_MILLIS / SPACING_MILLIS) + 2];
  private final double[] temperatureC = new double[moments.length];
  private int oldest;
  private int size;
  private boolean newestIsUnproven;
  private boolean aboveOnce;

  /** Takes a reading; gives the moment at which the warming began, once that is sure. */
  Optional<Moment> look(Moment at, double celsius, double riseC) {
    dropOld(at);
    dropIfWild(celsius, riseC);
    newestIsUnproven = false;
    if (size == 0 || at.millisSince(moments[place(size - 1)]) >= SPACING_MILLIS) {
      moments[place(size)] = at;
      temperatureC[place(size)] = celsius;
      size++;
      newestIsUnproven = true;
    }
    int coldest = coldest();
    boolean above = celsius >= temperatureC[coldest] + riseC;
    boolean sure = above && aboveOnce;
    aboveOnce = above;
    return sure ? Optional.of(moments[coldest]) : Optional.empty();
  }

  void reset() {
    size = 0;
    newestIsUnproven = false;
    aboveOnce = false;
  }

  private void dropOld(Moment at) {
    while (size > 0
        && (!moments[oldest].sameBoot(at) || at.millisSince(moments[oldest]) > WINDOW_MILLIS)) {
      oldest = place(1);
      size--;
    }
  }

  /**
   * No kiln warms by the whole rise from one reading to the next: the one before was a spark, and
   * nothing may be said to have warmed from it.
   */
  private void dropIfWild(double celsius, double riseC) {
    if (newestIsUnproven && size > 0 && celsius >= temperatureC[place(size - 1)] + riseC) {
      size--;
    }
  }

  private int coldest() {
    int best = oldest;
    double bestScore = Double.POSITIVE_INFINITY;
    for (int i = 0; i < size; i++) {
      int place = place(i);
      double hours = moments[place].millisSince(moments[oldest]) / 3_600_000.0;
      double score = temperatureC[place] - LEAN_C_PER_HOUR * hours;
      if (score <= bestScore) {
        bestScore = score;
        best = place;
      }
    }
    return best;
  }

  private int place(int index) {
    return (oldest + index) % moments.length;
  }
}
