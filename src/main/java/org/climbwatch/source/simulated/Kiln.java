package org.climbwatch.source.simulated;

/**
 * A kiln and its load, as far as heat is concerned. Invented, within what such kilns are like
 * (common practice).
 *
 * @param burnerKw kW (net) with all gas open and a full bottle
 * @param wareKg kg of ware and shelves
 * @param waterKg kg of water in ware and glaze
 * @param liningM2 m² of lining
 * @param liningM m of lining
 * @param gapM2 m² of spy holes, flue and gaps that radiate to the outside
 * @param outsideC °C around the kiln
 * @param lining what the wall is made of
 * @param skinKjPerK kJ/K of what answers a flame at once: gas, props, outermost skin of all
 * @param flameC °C of the flame if nothing cooled it; lower the more air goes through unburnt
 */
record Kiln(
    double burnerKw,
    double wareKg,
    double waterKg,
    double liningM2,
    double liningM,
    double gapM2,
    double outsideC,
    Lining lining,
    double skinKjPerK,
    double flameC) {
  /** kJ/K (guess, for 150 l). */
  private static final double SKIN_KJ_PER_K = 6;

  /** °C of a propane flame that nothing cools (from memory: 1970 to 1980 without excess air). */
  private static final double FLAME_C = 1970;

  /** A small community pottery's top hat: 150 l, 100 mm of fibre, two burners. */
  static final Kiln TOP_HAT = new Kiln(30, 45, 0.6, 1.7, 0.1, 0.006, 14);

  /** The same with a light load for fast work. */
  static final Kiln TOP_HAT_LIGHT = new Kiln(30, 14, 0.1, 1.7, 0.1, 0.006, 14);

  /** A kiln of ceramic fibre with a well set burner. */
  Kiln(
      double burnerKw,
      double wareKg,
      double waterKg,
      double liningM2,
      double liningM,
      double gapM2,
      double outsideC) {
    this(
        burnerKw,
        wareKg,
        waterKg,
        liningM2,
        liningM,
        gapM2,
        outsideC,
        Lining.FIBRE,
        SKIN_KJ_PER_K,
        FLAME_C);
  }
}
