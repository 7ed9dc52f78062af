package org.climbwatch.firing;

import java.util.OptionalDouble;

/**
 * How the program recognises the stages of a firing.
 *
 * @param beginsByItself whether a firing begins without the potter's word when the kiln warms
 * @param beginRiseC °C above the lowest of the last hour at which a firing begins by itself, 5 to
 *     200
 * @param dryBelowC °C up to which pore water leaves and the phase is drying, 0 to 300
 * @param coolingDropC °C below the firing's peak at which it is taken to be cooling, 20 to 500
 * @param coolingAfterSeconds seconds without a new peak before it is taken to be cooling, 60 to 14
 *     400
 * @param endBelowC °C below which a cooling firing ends by itself, 20 to 300
 * @param holdMinutes how long a hold is meant to last, 1 to 2880; empty when the potter's eye says
 * @param plan the curve that a firing is meant to follow
 */
public record FiringSettings(
    boolean beginsByItself,
    double beginRiseC,
    double dryBelowC,
    double coolingDropC,
    double coolingAfterSeconds,
    double endBelowC,
    OptionalDouble holdMinutes,
    Plan plan) {
  /** Common practice for a small fibre kiln; no published source. */
  public static final FiringSettings DEFAULT =
      new FiringSettings(true, 25, 120, 100, 1800, 60, OptionalDouble.empty(), Plan.NONE);

  public FiringSettings {
    require(beginRiseC, 5, 200, "beginRiseC");
    require(dryBelowC, 0, 300, "dryBelowC");
    require(coolingDropC, 20, 500, "coolingDropC");
    require(coolingAfterSeconds, 60, 14_400, "coolingAfterSeconds");
    require(endBelowC, 20, 300, "endBelowC");
    require(holdMinutes.orElse(1), 1, 2880, "holdMinutes");
  }

  private static void require(double value, double low, double high, String name) {
    if (!(value >= low && value <= high)) {
      throw new IllegalArgumentException(
          name + " must be " + low + " to " + high + ", was " + value);
    }
  }
}
