package org.climbwatch.source.simulated;

/**
 * A potter at the gas valve: looks every so often, raises or lowers in notches to keep the climb
 * that was meant, is away for a while, turns to reduction, holds. Habits are drawn. Invented.
 */
final class EnsemblePotter {
  private static final int STREAM = 102;
  private static final int LULL = 103;

  final double targetC;
  final double earlyCPerHour;
  final double lateCPerHour;
  final double lateFromC;
  final double checkMinutes;
  final double step;
  final double awayShare;
  final double reductionFromC;
  final double reductionMinutes;
  final double patienceMinutes;
  final double bodyBurnt;
  final double laterBurnt;
  final boolean dries;
  final double dryingMinutes;
  final double holdAtC;
  final double holdMinutes;
  final boolean holdDeclared;
  final double soakMinutes;
  final boolean gasOffDeclared;
  final boolean drawsWare;
  private final long seed;
  private double gas;
  private double wantedGas;
  private double nextCheckS;
  private double lastC;
  private double lastAtS;
  private double reductionSinceS = -1;
  private double dryingSinceS = -1;
  private double holdSinceS = -1;
  private boolean holdDone;
  private long looks;

  EnsemblePotter(long seed, boolean fast, double targetC, double kwForCPerHour) {
    this.seed = seed;
    this.targetC = targetC;
    Draw draw = new Draw(seed, STREAM);
    earlyCPerHour = fast ? draw.logBetween(200, 900) : draw.between(80, 200);
    lateCPerHour = fast ? earlyCPerHour * draw.between(0.5, 1) : draw.between(50, 120);
    lateFromC = draw.between(800, 1050);
    checkMinutes = fast ? draw.between(3, 8) : draw.between(6, 22);
    step = fast ? draw.between(0.1, 0.3) : draw.between(0.08, 0.22);
    awayShare = draw.chance(0.4) ? draw.between(0.05, 0.3) : 0;
    reductionFromC = draw.chance(0.7) ? draw.between(850, 1000) : 9999;
    reductionMinutes = fast ? draw.between(3, 15) : draw.between(20, 60);
    patienceMinutes = reductionMinutes * draw.between(0.2, 0.8);
    bodyBurnt = draw.between(0.72, 0.95);
    laterBurnt = draw.between(0.93, 0.99);
    dries = draw.chance(0.4);
    dryingMinutes = draw.between(10, 90);
    holdAtC = draw.chance(0.3) ? draw.between(300, 0.97 * targetC) : 9999;
    holdMinutes = draw.between(10, 45);
    holdDeclared = draw.chance(0.85);
    soakMinutes = draw.chance(0.5) ? draw.between(5, 40) : 0;
    gasOffDeclared = draw.chance(0.7);
    drawsWare = fast && draw.chance(0.5);
    gas = Math.min(Math.max(kwForCPerHour * earlyCPerHour * draw.between(0.5, 1.2), 0.015), 1);
    wantedGas = gas;
    nextCheckS = 300;
  }

  double gas() {
    return gas;
  }

  boolean holds() {
    return holdSinceS >= 0;
  }

  boolean dryingNow() {
    return dryingSinceS >= 0;
  }

  /** Share of the gas that burns in the chamber: less while the flame reduces. */
  double burnt(double second) {
    if (reductionSinceS < 0) {
      return 1;
    }
    double minute = (second - reductionSinceS) / 60;
    double into = Math.min(minute / 3, 1);
    double outOf = Math.min(Math.max((minute - reductionMinutes) / 5, 0), 1);
    double body = 1 + (bodyBurnt - 1) * into;
    return body + (laterBurnt - body) * outOf;
  }

  /** A second goes by; the potter sees what the instrument shows. */
  void look(double second, double shownC) {
    turn();
    begins(second, shownC);
    if (second < nextCheckS) {
      return;
    }
    double climb = (shownC - lastC) / Math.max(second - lastAtS, 1) * 3600;
    if (holds() || dryingNow()) {
      keep(second, shownC, climb);
    } else {
      pursue(second, shownC, climb);
    }
    lastC = shownC;
    lastAtS = second;
  }

  private void turn() {
    double rest = wantedGas - gas;
    gas += Math.min(Math.max(rest, -0.01), 0.01);
  }

  private void begins(double second, double shownC) {
    if (reductionSinceS < 0 && shownC >= reductionFromC) {
      reductionSinceS = second;
    }
    if (dries && dryingSinceS == -1 && shownC >= 85) {
      dryingSinceS = second;
      nextCheckS = second;
    }
    if (dryingNow() && second - dryingSinceS > dryingMinutes * 60) {
      dryingSinceS = -2;
      wantedGas = Math.min(wantedGas * 1.5, 1);
      nextCheckS = second;
    }
    if (!holdDone && !holds() && shownC >= holdAtC) {
      holdSinceS = second;
      nextCheckS = second;
      wantedGas *= 0.8;
    }
    if (holds() && second - holdSinceS > holdMinutes * 60) {
      holdSinceS = -1;
      holdDone = true;
      wantedGas = Math.min(wantedGas * 1.25, 1);
      nextCheckS = second + 300;
    }
  }

  private void keep(double second, double shownC, double climb) {
    double atC = holds() ? holdAtC : 85;
    double error = (atC - shownC) / 60 - climb / 1500;
    wantedGas *= 1 + Math.min(Math.max(error, -0.12), 0.12);
    wantedGas = Math.min(Math.max(wantedGas, 0.02), 1);
    nextCheckS = second + 120;
  }

  private void pursue(double second, double shownC, double climb) {
    looks++;
    boolean away = Hash.even(seed, LULL, looks) < awayShare;
    nextCheckS =
        second + checkMinutes * 60 * (away ? 2.5 : 1) * (0.7 + 0.6 * Hash.even(seed, LULL, -looks));
    boolean waits = reductionSinceS >= 0 && second - reductionSinceS < patienceMinutes * 60;
    if (waits) {
      return;
    }
    double wanted = shownC < lateFromC ? earlyCPerHour : lateCPerHour;
    double error = (wanted - climb) / wanted;
    if (error > 0.12) {
      wantedGas *= 1 + step * Math.min(3 * error, 1.5);
    } else if (error < -0.4) {
      // nobody takes much away from a fire that climbs
      wantedGas *= 1 - 0.3 * step;
    }
    wantedGas = Math.min(Math.max(Math.rint(wantedGas * 200) / 200, 0.015), 1);
  }
}
