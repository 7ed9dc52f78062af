package org.climbwatch.source.simulated;

/**
 * The heat balance of a fired kiln in steps of one second.
 *
 * <pre>
 *   flame -> chamber --radiation--> ware (dries, then loses its bound water)
 *                    --radiation--> lining, in layers --conduction--> outside
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

  /** kJ/(kg K) of fired clay and of fibre (from memory). */
  private static final double CLAY_KJ_PER_KG_K = 1.0;

  private static final double LINING_KJ_PER_KG_K = 1.1;

  /** kJ/kg: heat of vaporisation of water. */
  private static final double WATER_KJ_PER_KG = 2257;

  /** kJ for each kg of ware to drive out bound water round 500 °C, for a part raw load (guess). */
  private static final double BOUND_WATER_KJ_PER_KG = 30;

  private final Kiln kiln;
  private final double layerKjPerK;
  private final double wareM2;
  private final double[] layerC;
  private double chamberC;
  private double wareC;
  private double lostKw;

  /** A kiln that has been at a temperature for long. */
  KilnModel(Kiln kiln, double startC) {
    this.kiln = kiln;
    int layers = kiln.lining().layers();
    layerC = new double[layers];
    layerKjPerK =
        kiln.liningM2() * kiln.liningM() / layers * kiln.lining().kgPerM3() * LINING_KJ_PER_KG_K;
    wareM2 = 0.03 * kiln.wareKg();
    chamberC = startC;
    wareC = startC;
    for (int i = 0; i < layers; i++) {
      layerC[i] = startC + (kiln.outsideC() - startC) * i / layers;
    }
  }

  /** The same kiln as it stands now, to see where it would go from here. */
  KilnModel copy() {
    KilnModel copy = new KilnModel(kiln, chamberC);
    copy.wareC = wareC;
    System.arraycopy(layerC, 0, copy.layerC, 0, layerC.length);
    return copy;
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
    double stored = kiln.skinKjPerK() * chamberC;
    for (double each : layerC) {
      stored += layerKjPerK * each;
    }
    return stored;
  }

  /** kW that a flame of so many kW leaves in the chamber at its present temperature. */
  double keptKw(double flameKw) {
    double share = (kiln.flameC() - chamberC) / (kiln.flameC() - kiln.outsideC());
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
    chamberC += (keptKw(flameKw) - toWare - toLining - toGaps - drawn) / kiln.skinKjPerK();
    wareC += toWare / wareKjPerK(wareC);
    lostKw = toGaps + drawn + throughLiningKw(toLining);
  }

  private double throughLiningKw(double intoLiningKw) {
    double in = intoLiningKw;
    for (int i = 0; i < layerC.length; i++) {
      double next = i == layerC.length - 1 ? kiln.outsideC() : layerC[i + 1];
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

  private double conductanceKwPerK(double meanC) {
    return kiln.lining().wattsPerMK(meanC)
        / 1000
        * kiln.liningM2()
        / (kiln.liningM() / layerC.length);
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
