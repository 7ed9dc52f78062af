package org.climbwatch.source.simulated;

/** A probe of any sheath, any amplifier and any amount of flame noise; drawn. */
final class EnsembleProbe {
  private static final int STREAM = 104;
  private static final int FLUTTER = 105;
  private static final int HISS = 106;
  private static final int SPARK = 107;

  private final long seed;
  private final double lagFactor;
  private final double spreadC;
  private final double kept;
  private final double stepC;
  private final double sparks;
  final int intervalS;
  private double probeC;
  private double flutterC;

  EnsembleProbe(long seed, double startC) {
    this.seed = seed;
    Draw draw = new Draw(seed, STREAM);
    // from a thin bare couple to a thick ceramic tube: 1 to 3 min at 600 to 1000 °C
    lagFactor = draw.logBetween(0.4, 8);
    spreadC = draw.logBetween(0.1, 2);
    kept = draw.between(0, 0.9);
    stepC = draw.chance(0.7) ? 0.25 : 0.0078125;
    sparks = draw.chance(0.3) ? draw.logBetween(1e-4, 3e-3) : 2e-5;
    intervalS = draw.chance(0.8) ? 1 : 5;
    probeC = startC;
  }

  double probeC() {
    return probeC;
  }

  double lagS(double celsius) {
    return lagFactor * SimulatedProbe.lagSeconds(celsius) + 1;
  }

  void step(double chamberC, double flame, long second) {
    probeC += (chamberC - probeC) / lagS(probeC);
    double fresh = spreadC * (0.2 + 0.8 * Math.min(flame * 2, 1)) * Math.sqrt(1 - kept * kept);
    flutterC = kept * flutterC + fresh * Hash.normal(seed, FLUTTER, second);
  }

  double shownC(long second) {
    double hissC = 0.1 * Hash.normal(seed, HISS, second);
    double sparkC =
        Hash.even(seed, SPARK, second) < sparks ? 80 * Hash.normal(seed, SPARK, -second) : 0;
    double seenC = probeC + flutterC + hissC + sparkC;
    return Math.min(Math.max(Math.rint(seenC / stepC) * stepC, -50), 1370);
  }
}
