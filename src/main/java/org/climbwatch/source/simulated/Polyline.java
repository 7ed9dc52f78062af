package org.climbwatch.source.simulated;

/** A value that goes in straight lines from point to point and keeps its ends. */
final class Polyline {
  private final double[][] points;

  private Polyline(double[][] points) {
    this.points = points;
  }

  /** Pairs of place, mostly a minute, and value; in the order of places. */
  static Polyline through(double... placesAndValues) {
    double[][] points = new double[placesAndValues.length / 2][];
    for (int i = 0; i < points.length; i++) {
      points[i] = new double[] {placesAndValues[2 * i], placesAndValues[2 * i + 1]};
    }
    return new Polyline(points);
  }

  static Polyline always(double value) {
    return through(0, value);
  }

  double at(double place) {
    if (place <= points[0][0]) {
      return points[0][1];
    }
    for (int i = 1; i < points.length; i++) {
      if (place < points[i][0]) {
        double way = (place - points[i - 1][0]) / (points[i][0] - points[i - 1][0]);
        return points[i - 1][1] + way * (points[i][1] - points[i - 1][1]);
      }
    }
    return points[points.length - 1][1];
  }
}
