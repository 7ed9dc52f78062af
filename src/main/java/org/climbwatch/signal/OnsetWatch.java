package org.climbwatch.signal;

import java.util.List;
import java.util.Optional;

/**
 * Looks for the bend that a lost flame makes: a line through 36 means of 5 s each, another through
 * the 8 that follow, and how far apart they are against the scatter about the first. Behind a slow
 * probe the 16 that follow are looked at for the bend of a first-order lag.
 *
 * <p>The scatter is widened by its lag-one correlation as in {@link ClimbEstimator}, so that the
 * slow flutter of a windy fire is not taken for a bend; and the scatter of now counts where it is
 * the greater, so that noise which sets in is none either. Nothing is worked out but once in 5 s.
 */
final class OnsetWatch {
  private static final long BIN_MILLIS = 5_000;
  private static final int BEFORE = 36;
  private static final int AFTER = 8;

  /** A slow probe is looked at for longer; its bend takes a minute to be plain. */
  private static final int LONG_AFTER = 16;

  private static final int ALL = BEFORE + LONG_AFTER;

  /** Bins of the end, and of the time just before the turn, of which a middle is taken. */
  private static final int EDGE = 2;

  private static final double PER_HOUR = 3600_000.0 / BIN_MILLIS;

  private static final double AHEAD = 60_000.0 / BIN_MILLIS;
  private static final List<Bend> BENDS = Bend.all(LONG_AFTER, AHEAD);

  /** °C short of the line before that are looked at as a bend at all. */
  private static final double LEAST_MISSING_C = 0.5;

  /** Onset, lag and size of a bend are taken from the readings. */
  private static final int BEND_VALUES = 3;

  private final double[] meanC = new double[ALL];
  private final double[] missingC = new double[LONG_AFTER];
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
    onset = bins >= BEFORE + AFTER ? Optional.of(look()) : Optional.empty();
  }

  private void push(double celsius) {
    if (bins == ALL) {
      System.arraycopy(meanC, 1, meanC, 0, ALL - 1);
      bins--;
    }
    meanC[bins++] = celsius;
  }

  private FallOnset look() {
    int turn = bins - AFTER;
    Line before = Line.through(meanC, turn - BEFORE, BEFORE);
    double slopeNow = Line.slope(meanC, turn, AFTER);
    double error = Math.max(before.errorC(), scatterNowC(turn, slopeNow));
    double endC = endC();
    double ahead = AFTER + (BEFORE - EDGE) / 2.0;
    double missingC = before.at(ahead) - endC;
    double place = 1.0 / EDGE + before.squareOfPlace(ahead);
    double errorNow = error / Math.sqrt(Line.squares(AFTER));
    double errorTurn = error * Math.sqrt(1 / Line.squares(AFTER) + 1 / Line.squares(BEFORE));
    return new FallOnset(
        before.slope() * PER_HOUR,
        slopeNow * PER_HOUR,
        2 * errorNow * PER_HOUR,
        (before.slope() - slopeNow) / errorTurn,
        missingC,
        missingC / (error * Math.sqrt(place)),
        highestC(turn) - endC,
        bins == ALL ? hidden() : Optional.empty());
  }

  /** The last 80 s: a slow probe bends for long before it falls. Looked for only if it bends. */
  private Optional<HiddenFall> hidden() {
    Line before = Line.through(meanC, 0, BEFORE);
    if (before.at(LONG_AFTER + (BEFORE - EDGE) / 2.0) - endC() < LEAST_MISSING_C) {
      return Optional.empty();
    }
    double all = 0;
    for (int i = 0; i < LONG_AFTER; i++) {
      missingC[i] = before.at(i + (BEFORE + 1) / 2.0) - meanC[BEFORE + i];
      all += missingC[i] * missingC[i];
    }
    Bend best = BENDS.get(0);
    double explained = -1;
    for (Bend bend : BENDS) {
      double size = bend.size(missingC);
      if (size > 0 && bend.explained(size) > explained) {
        best = bend;
        explained = bend.explained(size);
      }
    }
    return best.isLagged() ? Optional.of(hidden(before, best, all)) : Optional.empty();
  }

  private HiddenFall hidden(Line before, Bend best, double all) {
    double size = Math.max(best.size(missingC), 0);
    double explained = best.explained(size);
    double left = Math.max(all - explained, 0) / (LONG_AFTER - BEND_VALUES);
    return new HiddenFall(
        (before.slope() - best.atEnd(size)) * PER_HOUR,
        2 * best.errorAtEnd(before.errorC()) * PER_HOUR,
        (before.slope() - best.ahead(size)) * PER_HOUR,
        Line.mean(missingC, LONG_AFTER - EDGE, EDGE),
        Math.sqrt(explained) / before.errorC(),
        Math.sqrt(left) / before.errorC(),
        highestC(BEFORE) - endC());
  }

  private double scatterNowC(int turn, double slope) {
    double sum = 0;
    double middleC = Line.mean(meanC, turn, AFTER);
    for (int i = 0; i < AFTER; i++) {
      double rest = meanC[turn + i] - middleC - slope * (i - (AFTER - 1) / 2.0);
      sum += rest * rest;
    }
    return Math.sqrt(sum / (AFTER - 2));
  }

  private double endC() {
    return Line.mean(meanC, bins - EDGE, EDGE);
  }

  private double highestC(int turn) {
    double highest = meanC[turn - EDGE];
    for (int i = turn - EDGE + 1; i < bins; i++) {
      highest = Math.max(highest, meanC[i]);
    }
    return highest;
  }
}
