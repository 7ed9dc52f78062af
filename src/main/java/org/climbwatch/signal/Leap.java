package org.climbwatch.signal;

import java.util.OptionalDouble;

/**
 * Sees that the signal has left the kiln: from one reading to the next it stands on another level
 * that no kiln, lid or burner reaches in that time, and stays there. A lead that shorts reads the
 * place of the short, a screw that works loose anything.
 *
 * <p>It has come back when it leaps back at least half the way, or by the potter's word, or when it
 * stands near the level that it left within two minutes. Later on nothing else proves it: the kiln
 * has moved meanwhile, nobody knows how far, so that it can stay away for the rest of a firing.
 */
final class Leap {
  /** °C from one level to the other. */
  private static final double LEAST_C = 25;

  /**
   * °C/s that the fastest bare couple in a fire moves (5: NIST gas-burner data), for so many s that
   * it may do so.
   */
  private static final double QUICK_C_PER_S = 6;

  private static final double QUICK_FOR_S = 10;

  /** °C/s of a kiln over minutes: 300 °C/h, a shut fibre kiln's fall (common practice). */
  private static final double SLOW_C_PER_S = 300 / 3600.0;

  /** °C/s of a fast climb: 600 °C/h (common practice). */
  private static final double CLIMB_C_PER_S = 600 / 3600.0;

  /** Readings that make a level, and how far they may stray: a share of the leap, and °C beside. */
  private static final int LEVEL = 3;

  private static final double STRAY = 0.1;
  private static final double STRAY_C = 1;

  /** Of the leap away, how far one the other way must go to be taken for the way back. */
  private static final double BACK = 0.5;

  /** Noises by which a level may stray that stands still: a couple that follows leaves a tail. */
  private static final double STILL_NOISES = 4;

  /** °C about the terminals that a shorted lead reads, and °C below the level before it. */
  private static final double LIKE_TERMINALS_C = 40;

  private static final double DEEP_C = 200;

  /** Noises that a leap must be wide besides. */
  private static final double NOISES = 8;

  /** ms without a level after which what is read is taken for the kiln's again. */
  private static final long CHAOS_MILLIS = 60_000;

  /** ms for which a signal that is near the level again, without a leap, is taken to be back. */
  private static final long CREEPS_BACK_MILLIS = 120_000;

  private boolean known;
  private double levelC;
  private long levelMillis;
  private boolean clockAnew;
  private final double[] apartC = new double[LEVEL];
  private int apart;
  private long apartSinceMillis;
  private boolean chaosAnew;
  private final Way way = new Way();
  private boolean away;
  private double leftC;
  private long leftMillis;
  private double leapC;

  /** What is read from now on is the kiln's, whatever was before. */
  void trust() {
    away = false;
    known = false;
    apart = 0;
  }

  /**
   * The clock may begin anew, and nobody knows for sure what time lies between; that the signal is
   * away stays.
   */
  void resume() {
    clockAnew = true;
    apart = 0;
    way.broken();
  }

  /** A look without a temperature: the readings on either side are still one run. */
  void fault() {
    chaosAnew = true;
    way.broken();
  }

  /** Nothing was read for a while. */
  void gap() {
    apart = 0;
    way.broken();
  }

  /**
   * Takes a temperature, spikes among them.
   *
   * @param terminalsC °C of the amplifier's terminals, where it tells
   * @param noiseC °C, standard
   */
  void add(long millis, double celsius, OptionalDouble terminalsC, double noiseC) {
    if (clockAnew) {
      levelMillis = millis;
      leftMillis = millis;
      clockAnew = false;
      known = known && away;
    }
    way.add(millis, celsius);
    if (known && Math.abs(celsius - levelC) <= reachC(millis - levelMillis, noiseC)) {
      stand(millis, celsius);
      return;
    }
    apartSinceMillis = apart == 0 || chaosAnew ? millis : apartSinceMillis;
    chaosAnew = false;
    stepAside(celsius);
    if (apart == LEVEL && strayC() <= STRAY * Math.abs(apartC[0] - anchorC()) + STRAY_C) {
      double seconds = (millis - levelMillis) / 1000.0;
      if (known && byWire(celsius, terminalsC, noiseC) && !reaches(levelC, celsius, seconds)) {
        leap(celsius - levelC);
      }
      stand(millis, celsius);
    } else if (known && millis - apartSinceMillis > CHAOS_MILLIS) {
      stand(millis, celsius);
    }
  }

  /** °C of the leap while the signal is away. */
  OptionalDouble awayC() {
    return away ? OptionalDouble.of(leapC) : OptionalDouble.empty();
  }

  /** Whether the newest readings stand apart and are too few to tell why. */
  boolean unsure() {
    return known && apart > 0;
  }

  private void stepAside(double celsius) {
    if (apart == LEVEL) {
      System.arraycopy(apartC, 1, apartC, 0, LEVEL - 1);
      apart--;
    }
    apartC[apart++] = celsius;
  }

  private void stand(long millis, double celsius) {
    known = true;
    levelC = celsius;
    levelMillis = millis;
    apart = 0;
    way.startFrom(celsius);
    boolean soon = millis - leftMillis <= CREEPS_BACK_MILLIS;
    away = away && !(soon && Math.abs(celsius - leftC) <= LEAST_C);
  }

  /** Whether a kiln can have gone from the level that was left to this one in the meantime. */
  private static boolean reaches(double fromC, double celsius, double seconds) {
    double coolestC =
        fromC > Cooling.ROOM_C ? Cooling.coolestC(fromC, seconds) : fromC - SLOW_C_PER_S * seconds;
    return celsius >= coolestC - LEAST_C && celsius <= fromC + CLIMB_C_PER_S * seconds + LEAST_C;
  }

  private void leap(double stepC) {
    if (away) {
      boolean back = stepC * leapC < 0 && Math.abs(stepC) >= BACK * Math.abs(leapC);
      away = !back;
      return;
    }
    away = true;
    leftC = levelC;
    leftMillis = levelMillis;
    leapC = stepC;
  }

  private static double reachC(long millis, double noiseC) {
    double seconds = millis / 1000.0;
    return Math.max(LEAST_C, NOISES * noiseC)
        + QUICK_C_PER_S * Math.min(seconds, QUICK_FOR_S)
        + SLOW_C_PER_S * seconds;
  }

  /** Whether no couple can have come here by following: the way was none, or too short for one. */
  private boolean byWire(double celsius, OptionalDouble terminalsC, double noiseC) {
    boolean still = strayC() <= STRAY_C + STILL_NOISES * noiseC;
    boolean likeLead =
        terminalsC.isPresent()
            && Math.abs(celsius - terminalsC.getAsDouble()) < LIKE_TERMINALS_C
            && Math.abs(celsius - levelC) > DEEP_C;
    return way.isNone(levelC, celsius, still, likeLead);
  }

  private double anchorC() {
    return known ? levelC : apartC[0] - LEAST_C;
  }

  private double strayC() {
    return Spread.of(apartC, 0, LEVEL);
  }
}
