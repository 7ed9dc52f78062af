package org.climbwatch.thermocouple;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What a calibration says must be added to a temperature after linearisation. The measured voltage
 * is never altered.
 *
 * <p>Between two points the correction goes in a straight line. Outside the points it keeps the
 * value of the nearest one: a line drawn on beyond its last point would grow a small error at 100
 * °C into a great one at 1200, and to drop to zero would make a step in the curve. What is not
 * known there is told by the uncertainty instead, see {@link #shareUnknown}.
 *
 * @param points from the coldest to the hottest, so that no two readings become one: what reads
 *     hotter must be hotter after the correction, too
 */
public record Correction(List<Point> points) {
  /** Nothing is added. */
  public static final Correction NONE = new Correction(List.of());

  /** °C: a couple that is off by more is to be replaced, not corrected. */
  public static final double MOST_C = 100;

  /**
   * °C over which wire may use up its whole tolerance at the least. Class 2 of Type K gathers its
   * 2.5 °C over the first 333 °C (2.5 / 0.0075) and from there on grows with the temperature; the
   * other base metals and classes lie between 125 and 375.
   */
  private static final double SHORTEST_REACH_C = 333;

  /**
   * One temperature at which the chain was compared.
   *
   * @param atC °C as it read, before any correction
   * @param addC °C to be added
   * @param expandedC °C, expanded uncertainty of what is added, k = 2
   */
  public record Point(double atC, double addC, double expandedC) {
    public Point {
      require(atC >= -270 && atC <= 1820, "at", atC, "-270 to 1820");
      require(Math.abs(addC) <= MOST_C, "add", addC, "-100 to 100; replace a couple so far off");
      require(expandedC >= 0 && expandedC <= MOST_C, "uncertainty", expandedC, "0 to 100");
    }

    private static void require(boolean holds, String what, double value, String allowed) {
      if (!holds) {
        throw new IllegalArgumentException(
            "correction: " + what + " " + value + " °C is out of range; allowed: " + allowed);
      }
    }
  }

  /**
   * @throws IllegalArgumentException for points that do not rise, as read or as corrected
   */
  public Correction {
    points = List.copyOf(points);
    for (int i = 1; i < points.size(); i++) {
      Point low = points.get(i - 1);
      Point high = points.get(i);
      if (!(high.atC > low.atC && high.atC + high.addC > low.atC + low.addC)) {
        throw new IllegalArgumentException(
            "correction: the points at %s and %s °C do not rise, as read and as corrected; take"
                    .formatted(low.atC, high.atC)
                + " points further apart, or merge them");
      }
    }
  }

  /**
   * Takes back what {@link #text} made.
   *
   * @throws IllegalArgumentException for any other text
   */
  public static Correction ofText(String text) {
    List<Point> points = new ArrayList<>();
    for (String point : text.isEmpty() ? new String[0] : text.split(" ")) {
      String[] numbers = point.split(":", -1);
      if (numbers.length != 3) {
        throw new IllegalArgumentException(
            "correction \"" + text + "\": a point is read:add:uncertainty, such as 0.4:-0.4:0.3");
      }
      points.add(
          new Point(
              Double.parseDouble(numbers[0]),
              Double.parseDouble(numbers[1]),
              Double.parseDouble(numbers[2])));
    }
    return new Correction(points);
  }

  /** For a record: {@code at:add:uncertainty} of each point in °C, with blanks between. */
  public String text() {
    return points.stream()
        .map(point -> point.atC + ":" + point.addC + ":" + point.expandedC)
        .collect(Collectors.joining(" "));
  }

  /** Whether there is nothing to add. */
  public boolean isNone() {
    return points.isEmpty();
  }

  /** °C to be added to a temperature as read. */
  public double addC(double readC) {
    if (points.isEmpty()) {
      return 0;
    }
    int above = firstFrom(readC);
    if (above == 0 || above == points.size()) {
      return points.get(above == 0 ? 0 : above - 1).addC;
    }
    Point low = points.get(above - 1);
    Point high = points.get(above);
    return low.addC + (high.addC - low.addC) * part(low, high, readC);
  }

  /** °C, expanded uncertainty (k = 2) of what is added. */
  public double expandedC(double readC) {
    if (points.isEmpty()) {
      return 0;
    }
    int above = firstFrom(readC);
    if (above == 0 || above == points.size()) {
      return points.get(above == 0 ? 0 : above - 1).expandedC;
    }
    Point low = points.get(above - 1);
    Point high = points.get(above);
    return low.expandedC + (high.expandedC - low.expandedC) * part(low, high, readC);
  }

  /**
   * How much of the limits of wire and amplifier the calibration leaves open: 0 at a point, 1 far
   * from all of them or without any.
   *
   * <p>At a point the comparison has measured what wire and amplifier do together, so their limits
   * have nothing more to say. Away from it they may have changed again. No standard says how fast;
   * taken here is that the error a class allows gathers evenly on the way from 0 °C to the
   * temperature: at a distance d from the nearest point the share is d / t. Between two points that
   * bounds the bow of an error pinned at both ends.
   */
  public double shareUnknown(double readC) {
    double nearestC = Double.POSITIVE_INFINITY;
    for (int i = 0; i < points.size(); i++) {
      nearestC = Math.min(nearestC, Math.abs(points.get(i).atC - readC));
    }
    return Math.min(1, nearestC / Math.max(Math.abs(readC), SHORTEST_REACH_C));
  }

  /** Index of the first point at or above a temperature. */
  private int firstFrom(double readC) {
    int i = 0;
    while (i < points.size() && points.get(i).atC < readC) {
      i++;
    }
    return i;
  }

  private static double part(Point low, Point high, double readC) {
    return (readC - low.atC) / (high.atC - low.atC);
  }
}
