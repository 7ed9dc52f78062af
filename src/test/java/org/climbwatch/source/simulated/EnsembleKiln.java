package org.climbwatch.source.simulated;

/** Kilns of many makes: size, wall, load, burner and weather are drawn. Invented. */
final class EnsembleKiln {
  private static final int STREAM = 101;

  private EnsembleKiln() {}

  /**
   * @param fast for fast work: a light load
   * @param targetC °C that the fire must be able to reach, or must not
   * @param tooSmall whether it must not
   */
  static Kiln drawn(long seed, boolean fast, double targetC, boolean tooSmall) {
    Draw draw = new Draw(seed, STREAM);
    double litres = draw.logBetween(50, 600);
    double liningM2 = 6.2 * StrictMath.pow(litres / 1000, 2.0 / 3);
    boolean brick = draw.chance(0.25);
    Lining lining =
        brick
            ? new Lining(draw.between(480, 850), draw.between(0.10, 0.2), 0.2, 6)
            : new Lining(
                draw.between(96, 160), draw.between(0.05, 0.08), draw.between(0.2, 0.35), 3);
    double liningM = brick ? draw.between(0.09, 0.2) : draw.between(0.05, 0.15);
    double wareKg = litres * (fast ? draw.between(0.04, 0.15) : draw.between(0.15, 0.45));
    double waterKg = wareKg * draw.between(0.003, 0.03);
    double gapM2 = liningM2 * draw.between(0.001, 0.006);
    double skinKjPerK = 0.04 * litres * draw.between(0.5, 2);
    double flameC = draw.between(1650, 1970);
    double outsideC = draw.between(-5, 30);
    Kiln without =
        new Kiln(
            1, wareKg, waterKg, liningM2, liningM, gapM2, outsideC, lining, skinKjPerK, flameC);
    double burnerKw =
        tooSmall
            ? steadyKw(without, targetC - draw.between(30, 250))
            : steadyKw(without, targetC) * draw.between(fast ? 2 : 1.5, fast ? 4 : 3);
    return new Kiln(
        burnerKw, wareKg, waterKg, liningM2, liningM, gapM2, outsideC, lining, skinKjPerK, flameC);
  }

  /** kW of flame that would keep a kiln at a temperature after a day's firing. */
  static double steadyKw(Kiln kiln, double celsius) {
    KilnModel model = new KilnModel(kiln, celsius);
    double flameKw = 0;
    for (int second = 0; second < 8 * 3600; second++) {
      flameKw += kiln.skinKjPerK() / 200 * (celsius - model.chamberC());
      double error = (celsius - model.chamberC()) * kiln.skinKjPerK() / 20;
      model.step(Math.max(flameKw + error, 1e-6), Draught.OPEN);
    }
    return flameKw;
  }
}
