package org.climbwatch.signal;

import java.util.ArrayList;
import java.util.List;

/**
 * One way in which the reading of a probe leaves its line when the rate of what it measures changes
 * at once by one unit: {@code x - lag * (1 - exp(-x / lag))} after a time {@code x}, the ramp
 * response of a first-order lag; a plain kink without one.
 */
final class Bend {
  /** Bins of 5 s: no lag to speak of, a minute, four minutes as behind a thick tube. */
  private static final double[] LAGS = {0, 12, 48};

  /** Bins that a bend must be old to be told from another. */
  private static final int YOUNGEST = 3;

  private final boolean lagged;
  private final double[] way;
  private final double square;

  /** Change of the reading's rate at the end, and so many bins after it. */
  private final double rateAtEnd;

  private final double rateAhead;

  private Bend(int bins, int onset, double lag, double ahead) {
    lagged = lag > 0;
    way = new double[bins];
    double sum = 0;
    for (int i = 0; i < bins; i++) {
      way[i] = way(Math.max(i + 0.5 - onset, 0), lag);
      sum += way[i] * way[i];
    }
    square = sum;
    rateAtEnd = rate(bins - onset, lag);
    rateAhead = rate(bins - onset + ahead, lag);
  }

  /** All that begin at any bin and have any of the lags. */
  static List<Bend> all(int bins, double ahead) {
    List<Bend> all = new ArrayList<>();
    for (int onset = 0; onset <= bins - YOUNGEST; onset++) {
      for (double lag : LAGS) {
        all.add(new Bend(bins, onset, lag, ahead));
      }
    }
    return List.copyOf(all);
  }

  private static double way(double x, double lag) {
    return lag == 0 ? x : x - lag * (1 - StrictMath.exp(-x / lag));
  }

  private static double rate(double x, double lag) {
    return lag == 0 ? 1 : 1 - StrictMath.exp(-x / lag);
  }

  boolean isLagged() {
    return lagged;
  }

  /** By how much the underlying rate fell, if this is how it bent: least squares. */
  double size(double[] missing) {
    double sum = 0;
    for (int i = 0; i < way.length; i++) {
      sum += missing[i] * way[i];
    }
    return sum / square;
  }

  /** How much of the sum of squares a bend of this size takes away. */
  double explained(double size) {
    return size * size * square;
  }

  double atEnd(double size) {
    return size * rateAtEnd;
  }

  double ahead(double size) {
    return size * rateAhead;
  }

  /** Standard error of the change of rate at the end, for one of a reading. */
  double errorAtEnd(double error) {
    return error / Math.sqrt(square) * rateAtEnd;
  }
}
