package org.climbwatch.thermocouple;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The probe beside a reference, both once steady: an ice bath, boiling water, another instrument.
 *
 * @param readC °C that the probe read, before any correction
 * @param readExpandedC °C, k = 2: what noise and steps leave open of that reading alone
 * @param reference what the temperature was
 */
public record Comparison(double readC, double readExpandedC, ReferencePoint reference) {
  /**
   * t for 95 % by degrees of freedom, 1 to 10: few repeats say little of their own scatter. Beyond,
   * the last one serves. Read in NIST Technical Note 1297, table B.1, which is table G.2 of the
   * GUM.
   */
  private static final double[] T_95 = {
    12.71, 4.30, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23
  };

  public Comparison {
    if (!(readC >= -270 && readC <= 1820 && readExpandedC >= 0 && readExpandedC <= 100)) {
      throw new IllegalArgumentException(
          "comparison: read %s °C with an uncertainty of %s °C; allowed: -270 to 1820, 0 to 100"
              .formatted(readC, readExpandedC));
    }
  }

  /** The point of a correction that this one comparison makes. */
  public Correction.Point point() {
    double u = Math.sqrt(square(reference.expandedC()) + square(readExpandedC));
    return new Correction.Point(readC, reference.temperatureC() - readC, u);
  }

  /**
   * The correction that comparisons make together: those that read within so many degrees of the
   * first of their group become one point, their mean.
   *
   * <p>The reference's own uncertainty is the same each time and no repeating lessens it; to it
   * comes that of the mean, from the scatter of the repeats, or else what was known of one reading
   * where that is more.
   *
   * @param withinC °C, 0 or more; about 5 where a kiln is held by hand
   * @throws IllegalArgumentException when the points do not rise
   */
  public static Correction correction(List<Comparison> comparisons, double withinC) {
    List<Comparison> sorted = new ArrayList<>(comparisons);
    sorted.sort(Comparator.comparingDouble(Comparison::readC));
    List<Correction.Point> points = new ArrayList<>();
    for (int from = 0; from < sorted.size(); ) {
      int to = from + 1;
      while (to < sorted.size() && sorted.get(to).readC - sorted.get(from).readC <= withinC) {
        to++;
      }
      points.add(merged(sorted.subList(from, to)));
      from = to;
    }
    return new Correction(points);
  }

  private static Correction.Point merged(List<Comparison> group) {
    if (group.size() == 1) {
      return group.get(0).point();
    }
    double n = group.size();
    double atC = 0;
    double addC = 0;
    double referenceC = 0;
    double readingC = 0;
    for (Comparison each : group) {
      atC += each.readC / n;
      addC += each.point().addC() / n;
      referenceC = Math.max(referenceC, each.reference.expandedC());
      readingC = Math.max(readingC, each.readExpandedC);
    }
    double meanC = Math.max(meanExpandedC(group, addC), readingC / Math.sqrt(n));
    return new Correction.Point(atC, addC, Math.sqrt(square(referenceC) + square(meanC)));
  }

  /** Type A: the standard deviation of the mean, expanded to 95 % for so few. */
  private static double meanExpandedC(List<Comparison> group, double meanAddC) {
    double squares = 0;
    for (Comparison each : group) {
      squares += square(each.point().addC() - meanAddC);
    }
    int freedom = group.size() - 1;
    double t = T_95[Math.min(freedom, T_95.length) - 1];
    return t * Math.sqrt(squares / freedom / group.size());
  }

  private static double square(double x) {
    return x * x;
  }
}
