package org.climbwatch.source.simulated;

/**
 * The heat balance of a fired kiln in steps of one second.
 *
 * <pre>
 *   flame -> chamber --radiation--> ware (dries, then loses its bound water)
 *                    --radiation--> lining, three layers --conduction--> outside
 *                    --radiation--> gaps
 *                    --draught----> outside, once no flame burns
 * </pre>
 *
 * <p>What a flame leaves in the chamber shrinks as the flue gas gets hotter. Temperatures in °C,
 * heat in kJ, power in kW.
 */
final class KilnModel {
  /** kW/(m² K⁴); CODATA. */
  private static final double STEFAN_BOLTZMANN = 5.670374e-11;

  private static final double EMISSIVITY = 0.8;

  /** °C of a propane flame that nothing cools (from memory: 1970 to 1980 without excess air). */
  private static final double FLAME_C = 1970;

  /** kJ/K of what answers at once: gas, props, the outermost skin of lining and ware. */
  private static final double CHAMBER_KJ_PER_K = 6;

  /** kJ/(kg K) of fired clay and of fibre (from memory). */
  private static final double CLAY_KJ_PER_KG_K = 1.0;

  private static final double FIBRE_KJ_PER_KG_K = 1.1;
  private static final double FIBRE_KG_PER_M3 = 128;

  /** kJ/kg: heat of vaporisation of water. */
  private static final double WATER_KJ_PER_KG = 2257;

  /** kJ for each kg of ware to drive out bound water round 500 °C, for a part raw load (guess). */
  private static final double BOUND_WATER_KJ_PER_KG = 30;

  private static final int LAYERS = 3;

  private final Kiln kiln;
  private final double layerKjPerK;
  private final double wareM2;
  private final double[] layerC = new double[LAYERS];
  private double chamberC;
  private double wareC;
  private double lostKw;

  /** A kiln that has been at a temperature for long. */
  KilnModel(Kiln kiln, double startC) {
    this.kiln = kiln;
    layerKjPerK = kiln.liningM2() * kiln.liningM() / LAYERS * FIBRE_KG_PER_M3 * FIBRE_KJ_PER_KG_K;
    wareM2 = 0.03 * kiln.wareKg();
    chamberC = startC;
    wareC = startC;
    for (int i = 0; i < LAYERS; i++) {
      layerC[i] = startC + (kiln.outsideC() - startC) * i / LAYERS;
    }
  }

  double chamberC() {
    return chamberC;
  }

  double wareC() {
    return wareC;
  }

  /** kW that went out through lining, gaps and draught in the last step. */
  double lostKw() {
    return lostKw;
  }

  /** kJ in chamber and lining above 0 °C; that of the ware is the integral of its capacity. */
  double storedBesideWareKj() {
    double stored = CHAMBER_KJ_PER_K * chamberC;
    for (double each : layerC) {
      stored += layerKjPerK * each;
    }
    return stored;
  }

  /** kW that a flame of so many kW leaves in the chamber at its present temperature. */
  double keptKw(double flameKw) {
    double share = (FLAME_C - chamberC) / (FLAME_C - kiln.outsideC());
    return flameKw * Math.max(share, 0);
  }

  /**
   * One second.
   *
   * @param flameKw kW of the flame, 0 when it is out
   * @param draught through a kiln without flame; with one, the flue gas is in {@link #keptKw}
   */
  void step(double flameKw, Draught draught) {
    double toWare = radiationKw(wareM2, chamberC, wareC);
    double toLining = radiationKw(kiln.liningM2(), chamberC, layerC[0]);
    double toGaps = radiationKw(kiln.gapM2(), chamberC, kiln.outsideC());
    double drawn = flameKw > 0 ? 0 : draught.kwPerK() * (chamberC - kiln.outsideC());
    chamberC += (keptKw(flameKw) - toWare - toLining - toGaps - drawn) / CHAMBER_KJ_PER_K;
    wareC += toWare / wareKjPerK(wareC);
    lostKw = toGaps + drawn + throughLiningKw(toLining);
  }

  private double throughLiningKw(double intoLiningKw) {
    double in = intoLiningKw;
    for (int i = 0; i < LAYERS; i++) {
      double next = i == LAYERS - 1 ? kiln.outsideC() : layerC[i + 1];
      double out = conductanceKwPerK((layerC[i] + next) / 2) * (layerC[i] - next);
      layerC[i] += (in - out) / layerKjPerK;
      in = out;
    }
    return in;
  }

  private static double radiationKw(double m2, double fromC, double toC) {
    double from = fromC + 273.15;
    double to = toC + 273.15;
    double radiated =
        EMISSIVITY * STEFAN_BOLTZMANN * (from * from * from * from - to * to * to * to);
    double stirred = 0.015 * (fromC - toC);
    return m2 * (radiated + stirred);
  }

  /** Fibre conducts better the hotter it is: 0.06 W/(m K) cold, 0.35 at 1200 °C (from memory). */
  private double conductanceKwPerK(double meanC) {
    double wattsPerMK = 0.06 + 0.29 * meanC / 1200;
    return wattsPerMK / 1000 * kiln.liningM2() / (kiln.liningM() / LAYERS);
  }

  /** kJ/K of the ware at a temperature, heat of drying and of bound water in it. */
  double wareKjPerK(double celsius) {
    double water = kiln.waterKg() * WATER_KJ_PER_KG * bell(celsius, 98, 15);
    double bound = kiln.wareKg() * BOUND_WATER_KJ_PER_KG * bell(celsius, 500, 50);
    return kiln.wareKg() * CLAY_KJ_PER_KG_K + water + bound;
  }

  /** A bell of area one: spreads a heat of change over a span of temperature. */
  private static double bell(double x, double middle, double width) {
    double away = (x - middle) / width;
    return Math.abs(away) > 6
        ? 0
        : StrictMath.exp(-0.5 * away * away) / (width * 2.5066282746310002);
  }
}
