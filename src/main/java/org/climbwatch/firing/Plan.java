package org.climbwatch.firing;

import java.util.List;

/**
 * The curve that a firing is meant to follow: segments of a ramp and a hold, counted from lighting
 * at {@link #FROM_C}.
 *
 * @param segments may be empty: no plan
 */
public record Plan(List<Segment> segments) {
  public static final Plan NONE = new Plan(List.of());

  /** °C below the plan down to which a kiln that is fired by hand is where it is meant to be. */
  public static final double BY_HAND_C = 25;

  /** °C at which a plan begins: a kiln in a shed, about. */
  public static final double FROM_C = 20;

  /**
   * A ramp and the hold at its end.
   *
   * @param rateCPerHour °C/h, 1 to 5000; the direction follows from where it leads
   * @param toC °C, 20 to 1400
   * @param holdMinutes minutes at its end, 0 to 2880
   */
  public record Segment(double rateCPerHour, double toC, double holdMinutes) {
    public Segment {
      require(rateCPerHour, 1, 5000, "rateCPerHour");
      require(toC, 20, 1400, "toC");
      require(holdMinutes, 0, 2880, "holdMinutes");
    }

    private static void require(double value, double low, double high, String name) {
      if (!(value >= low && value <= high)) {
        throw new IllegalArgumentException(
            name + " must be " + low + " to " + high + ", was " + value);
      }
    }
  }

  public Plan {
    segments = List.copyOf(segments);
  }

  /**
   * Where the firing is meant to be.
   *
   * @param elapsedS s since lighting, 0 or more
   * @return °C; behind the end of the plan its last temperature; NaN without a plan
   */
  public double meantC(double elapsedS) {
    double fromC = FROM_C;
    double leftS = elapsedS;
    for (Segment segment : segments) {
      double rampS = Math.abs(segment.toC() - fromC) / segment.rateCPerHour() * 3600;
      if (leftS < rampS) {
        return fromC + (segment.toC() - fromC) * (leftS / rampS);
      }
      leftS -= rampS + segment.holdMinutes() * 60;
      fromC = segment.toC();
      if (leftS <= 0) {
        return fromC;
      }
    }
    return segments.isEmpty() ? Double.NaN : fromC;
  }

  /**
   * Whether the kiln is meant to hold or to come down, so that it is right not to climb.
   *
   * @param elapsedS s since lighting, 0 or more
   * @return false behind the end of the plan, where nothing is meant
   */
  public boolean rests(double elapsedS) {
    double fromC = FROM_C;
    double leftS = elapsedS;
    for (Segment segment : segments) {
      double rampS = Math.abs(segment.toC() - fromC) / segment.rateCPerHour() * 3600;
      double wholeS = rampS + segment.holdMinutes() * 60;
      if (leftS < wholeS) {
        return leftS >= rampS || segment.toC() < fromC;
      }
      leftS -= wholeS;
      fromC = segment.toC();
    }
    return false;
  }

  /**
   * Whether it holds or comes down on its way: later it goes higher again.
   *
   * @param elapsedS s since lighting, 0 or more
   */
  public boolean restsOnItsWay(double elapsedS) {
    double nowC = meantC(elapsedS);
    double endS = 0;
    double fromC = FROM_C;
    boolean higher = false;
    for (Segment segment : segments) {
      endS += Math.abs(segment.toC() - fromC) / segment.rateCPerHour() * 3600;
      endS += segment.holdMinutes() * 60;
      fromC = segment.toC();
      higher |= endS > elapsedS && segment.toC() > nowC;
    }
    return higher && rests(elapsedS);
  }
}
