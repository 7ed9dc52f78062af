package org.climbwatch.source.simulated;

/**
 * What a kiln's wall is made of. It conducts better the hotter it is.
 *
 * @param kgPerM3 kg/m³
 * @param coldWattsPerMK W/(m K) at 0 °C
 * @param hotterWattsPerMK W/(m K) more at 1200 °C
 * @param layers it is cut into for the sum; a dense wall needs more than a light one
 */
record Lining(double kgPerM3, double coldWattsPerMK, double hotterWattsPerMK, int layers) {
  /** Ceramic fibre: 0.06 W/(m K) cold, 0.35 at 1200 °C (from memory). */
  static final Lining FIBRE = new Lining(128, 0.06, 0.29, 3);

  /** Insulating brick: 0.15 W/(m K) cold, 0.35 at 1200 °C (from memory). */
  static final Lining BRICK = new Lining(600, 0.15, 0.20, 6);

  double wattsPerMK(double celsius) {
    return coldWattsPerMK + hotterWattsPerMK * celsius / 1200;
  }
}
