package org.climbwatch.journal;

/**
 * Makes a curve of one probe's readings as they are handed in, by the rules of a recorded one: a
 * gap shows wherever something is missing, and reducing keeps every peak.
 */
public final class CurveCollector {
  private final CurvePoints points = new CurvePoints();
  private final GapRule gaps = new GapRule();

  /** A look that gave no temperature. */
  public void fault() {
    gaps.fault();
  }

  /**
   * A temperature that is no spike.
   *
   * @param boot and {@code ms}: its moment
   * @param elapsedMs ms since the firing's first reading
   */
  public void good(int boot, long ms, long elapsedMs, double temperatureC) {
    if (gaps.good(boot, ms)) {
      points.gap();
    }
    points.add(elapsedMs, temperatureC);
  }

  /**
   * The curve so far with at most so many points.
   *
   * @param most 8 to 20 000
   */
  public Curve curve(int most) {
    return CurveReduction.reduce(points.curve(), most);
  }
}
