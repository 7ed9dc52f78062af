package org.climbwatch.signal;

import java.util.Optional;

/**
 * Looks for the bend that a lost flame makes: a line through 36 means of 5 s each, another through
 * the 8 that follow, and how far apart they are against the scatter about the first.
 *
 * <p>The scatter is widened by its lag-one correlation as in {@link ClimbEstimator}, so that the
 * slow flutter of a windy fire is not taken for a bend; and the scatter of now counts where it is
 * the greater, so that noise which sets in is none either. Nothing is worked out but once in 5 s.
 */
final class OnsetWatch {
  private static final long BIN_MILLIS = 5_000;
  private static final int BEFORE = 36;
  private static final int AFTER = 8;
  private static final int ALL = BEFORE + AFTER;

  /** Bins of the end, and of the time just before the turn, of which a middle is taken. */
  private static final int EDGE = 2;

  private static final double PER_HOUR = 3600_000.0 / BIN_MILLIS;

  /** °C, standard: half a step of a 14-bit amplifier hides at least this (0.25 °C / sqrt 12). */
  private static final double LEAST_NOISE_C = 0.07;

  private static final double MOST_CORRELATION = 0.9;

  private final double[] meanC = new double[ALL];
  private final Spans spans = new Spans(BIN_MILLIS);
  private int bins;
  private long bin;
  private double sumC;
  private int readings;
  private int missed;
  private Optional<FallOnset> onset = Optional.empty();

  void reset() {
    countAfresh();
    bins = 0;
    onset = Optional.empty();
  }

  /** Counts spans from the next reading on; the means so far stay. */
  void countAfresh() {
    spans.restart();
    readings = 0;
    missed = 0;
  }

  void add(long millis, double celsius) {
    long now = spans.number(millis);
    if (readings > 0 && now != bin) {
      finish(now);
    }
    bin = now;
    sumC = readings == 0 ? celsius : sumC + celsius;
    readings++;
  }

  /** As of the last full 5 s; empty until three minutes and 40 s are known. */
  Optional<FallOnset> onset() {
    return onset;
  }

  /** Slow readings leave bins empty: those lie on the way from one mean to the next. */
  private void finish(long now) {
    double newC = sumC / readings;
    double lastC = bins > 0 ? meanC[bins - 1] : newC;
    int empty = bins > 0 ? missed : 0;
    for (int i = 1; i <= empty; i++) {
      push(lastC + (newC - lastC) * i / (empty + 1));
    }
    push(newC);
    missed = (int) Math.min(now - bin - 1, ALL);
    readings = 0;
    onset = bins == ALL ? Optional.of(look()) : Optional.empty();
  }

  private void push(double celsius) {
    if (bins == ALL) {
      System.arraycopy(meanC, 1, meanC, 0, ALL - 1);
      bins--;
    }
    meanC[bins++] = celsius;
  }

  private FallOnset look() {
    double slopeBefore = slope(0, BEFORE);
    double slopeNow = slope(BEFORE, AFTER);
    double error = errorC(slopeBefore, slopeNow);
    double endC = mean(ALL - EDGE, EDGE);
    double ahead = ALL - (EDGE + BEFORE) / 2.0;
    double ledC = mean(0, BEFORE) + slopeBefore * ahead;
    double place = 1.0 / EDGE + 1.0 / BEFORE + ahead * ahead / squares(BEFORE);
    double errorNow = error / Math.sqrt(squares(AFTER));
    double errorTurn = error * Math.sqrt(1 / squares(AFTER) + 1 / squares(BEFORE));
    return new FallOnset(
        slopeBefore * PER_HOUR,
        slopeNow * PER_HOUR,
        2 * errorNow * PER_HOUR,
        (slopeBefore - slopeNow) / errorTurn,
        ledC - endC,
        (ledC - endC) / (error * Math.sqrt(place)),
        highest() - endC);
  }

  /** °C, standard, of a mean: about the line before, or about that of now if that is worse. */
  private double errorC(double slopeBefore, double slopeNow) {
    double sum = 0;
    double neighbours = 0;
    double last = 0;
    double middleC = mean(0, BEFORE);
    for (int i = 0; i < BEFORE; i++) {
      double rest = meanC[i] - middleC - slopeBefore * (i - (BEFORE - 1) / 2.0);
      sum += rest * rest;
      neighbours += rest * last;
      last = rest;
    }
    double correlation = sum > 0 ? Math.min(Math.max(neighbours / sum, 0), MOST_CORRELATION) : 0;
    double noiseC = Math.max(Math.sqrt(sum / (BEFORE - 2)), LEAST_NOISE_C);
    double beforeC = noiseC * Math.sqrt((1 + correlation) / (1 - correlation));
    return Math.max(beforeC, scatterNowC(slopeNow));
  }

  private double scatterNowC(double slope) {
    double sum = 0;
    double middleC = mean(BEFORE, AFTER);
    for (int i = 0; i < AFTER; i++) {
      double rest = meanC[BEFORE + i] - middleC - slope * (i - (AFTER - 1) / 2.0);
      sum += rest * rest;
    }
    return Math.sqrt(sum / (AFTER - 2));
  }

  private double slope(int from, int many) {
    double sum = 0;
    for (int i = 0; i < many; i++) {
      sum += meanC[from + i] * (i - (many - 1) / 2.0);
    }
    return sum / squares(many);
  }

  private double mean(int from, int many) {
    double sum = 0;
    for (int i = from; i < from + many; i++) {
      sum += meanC[i];
    }
    return sum / many;
  }

  /** Sum of the squares of so many places about their middle. */
  private static double squares(int many) {
    return many * (many * (double) many - 1) / 12;
  }

  private double highest() {
    double highest = meanC[BEFORE - EDGE];
    for (int i = BEFORE - EDGE + 1; i < ALL; i++) {
      highest = Math.max(highest, meanC[i]);
    }
    return highest;
  }
}
