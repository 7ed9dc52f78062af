package org.climbwatch.source.simulated;

/**
 * A kiln and its load, as far as heat is concerned. Invented, within what such kilns are like
 * (common practice).
 *
 * @param burnerKw kW (net) with all gas open and a full bottle
 * @param wareKg kg of ware and shelves
 * @param waterKg kg of water in ware and glaze
 * @param liningM2 m² of lining
 * @param liningM m of ceramic fibre
 * @param gapM2 m² of spy holes, flue and gaps that radiate to the outside
 * @param outsideC °C around the kiln
 */
record Kiln(
    double burnerKw,
    double wareKg,
    double waterKg,
    double liningM2,
    double liningM,
    double gapM2,
    double outsideC) {
  /** A small community pottery's top hat: 150 l, 100 mm of fibre, two burners. */
  static final Kiln TOP_HAT = new Kiln(30, 45, 0.6, 1.7, 0.1, 0.006, 14);

  /** The same with a light load for fast work. */
  static final Kiln TOP_HAT_LIGHT = new Kiln(30, 14, 0.1, 1.7, 0.1, 0.006, 14);
}
