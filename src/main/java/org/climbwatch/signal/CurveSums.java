package org.climbwatch.signal;

import java.util.Arrays;

/**
 * Sums over the newest bins, for several lengths in one walk: what {@link CurveFit} needs to draw
 * its lines through any of these stretches without looking at the curve again.
 *
 * <p>All stretches end at the newest bin, so the sums of a short one are on the way to those of a
 * long one. Temperatures are taken against the newest bin's, so that nothing cancels.
 */
final class CurveSums {
  private static final int RATES = CurveFit.RATES.length;

  /** By bins back from the newest, then by rate. */
  private static final double[][] SHAPE = new double[Bins.MOST][RATES];

  static {
    for (int lag = 0; lag < Bins.MOST; lag++) {
      for (int k = 0; k < RATES; k++) {
        SHAPE[lag][k] = CurveFit.shape(CurveFit.RATES[k], -lag * Bins.BIN_S);
      }
    }
  }

  private final int[] stretches;
  private final Sums[] sums;
  private final Sums running = new Sums();

  /** Sums of one stretch: of x, x², x y by rate; of y and y². */
  static final class Sums {
    final double[] x = new double[RATES];
    final double[] xx = new double[RATES];
    final double[] xy = new double[RATES];
    double y;
    double yy;
    int bins;

    private void clear() {
      Arrays.fill(x, 0);
      Arrays.fill(xx, 0);
      Arrays.fill(xy, 0);
      y = 0;
      yy = 0;
      bins = 0;
    }

    private void add(double[] shape, double celsius) {
      for (int k = 0; k < RATES; k++) {
        x[k] += shape[k];
        xx[k] += shape[k] * shape[k];
        xy[k] += shape[k] * celsius;
      }
      y += celsius;
      yy += celsius * celsius;
      bins++;
    }

    private void copy(Sums other) {
      System.arraycopy(other.x, 0, x, 0, RATES);
      System.arraycopy(other.xx, 0, xx, 0, RATES);
      System.arraycopy(other.xy, 0, xy, 0, RATES);
      y = other.y;
      yy = other.yy;
      bins = other.bins;
    }
  }

  /**
   * @param stretches in bins' time, the shortest first
   */
  CurveSums(int... stretches) {
    this.stretches = stretches.clone();
    sums = new Sums[stretches.length];
    for (int i = 0; i < sums.length; i++) {
      sums[i] = new Sums();
    }
  }

  /** How far an exponential of a bin lies from the newest bin, by rate. */
  static double shape(int rate, int lag) {
    return SHAPE[lag][rate];
  }

  /** Takes the curve as it is now. */
  void take(Bins all) {
    running.clear();
    int newest = all.size() - 1;
    double originC = all.celsius(newest);
    int next = newest;
    for (int i = 0; i < stretches.length; i++) {
      while (next >= 0 && all.lag(next) < stretches[i]) {
        running.add(SHAPE[all.lag(next)], all.celsius(next) - originC);
        next--;
      }
      sums[i].copy(running);
    }
  }

  /** The sums over the newest of the listed stretches. */
  Sums of(int stretch) {
    return sums[stretch];
  }
}
