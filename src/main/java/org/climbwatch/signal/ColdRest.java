package org.climbwatch.signal;

import java.util.OptionalDouble;

/**
 * What a probe shows beside its cold junction while both have lain still for three hours.
 *
 * <p>A kiln that is still warm from yesterday also shows more than its cold junction, but it cools:
 * even a heavy one loses more than 3 % of that in two hours and a half (a time constant under 80
 * h). So only what moves by less is taken for rest.
 */
final class ColdRest {
  private static final long BLOCK_MILLIS = 1_800_000;
  private static final int BLOCKS = 6;
  private static final int LEAST_IN_BLOCK = 10;

  /** Of the difference, and °C beside for noise, that the probe may move from block to block. */
  private static final double SHARE = 0.03;

  private static final double NOISE_C = 0.1;

  /** °C that the cold junction may move. */
  private static final double COLD_JUNCTION_C = 1.5;

  /** °C off the middle that end the rest at once. */
  private static final double LEFT_C = 4;

  private final double[] probeC = new double[BLOCKS];
  private final double[] coldC = new double[BLOCKS];
  private int filled;
  private long beganMillis;
  private int readings;
  private double probeSumC;
  private double coldSumC;
  private double middleC;
  private OptionalDouble offsetC = OptionalDouble.empty();

  void reset() {
    filled = 0;
    readings = 0;
    offsetC = OptionalDouble.empty();
  }

  void add(long millis, double celsius, double coldJunctionC) {
    if (offsetC.isPresent() && Math.abs(celsius - middleC) > LEFT_C) {
      reset();
    }
    if (readings == 0) {
      beganMillis = millis;
      probeSumC = 0;
      coldSumC = 0;
    }
    readings++;
    probeSumC += celsius;
    coldSumC += coldJunctionC;
    if (millis - beganMillis >= BLOCK_MILLIS) {
      block();
      readings = 0;
    }
  }

  /** °C, probe less cold junction; empty while they have not lain still for long. */
  OptionalDouble offsetC() {
    return offsetC;
  }

  private void block() {
    if (readings < LEAST_IN_BLOCK) {
      reset();
      return;
    }
    if (filled == BLOCKS) {
      System.arraycopy(probeC, 1, probeC, 0, BLOCKS - 1);
      System.arraycopy(coldC, 1, coldC, 0, BLOCKS - 1);
      filled--;
    }
    probeC[filled] = probeSumC / readings;
    coldC[filled] = coldSumC / readings;
    filled++;
    if (filled == BLOCKS) {
      middleC = mean(probeC);
      double offset = middleC - mean(coldC);
      boolean still =
          range(probeC) <= SHARE * Math.abs(offset) + NOISE_C && range(coldC) <= COLD_JUNCTION_C;
      offsetC = still ? OptionalDouble.of(offset) : OptionalDouble.empty();
    }
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  private static double range(double[] values) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return high - low;
  }
}
