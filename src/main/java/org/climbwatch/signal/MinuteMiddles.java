package org.climbwatch.signal;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;

/** The middle temperature of each of the last ten minutes, whatever single readings do. */
final class MinuteMiddles {
  private static final long MINUTE_MILLIS = 60_000;
  private static final int MINUTES = 10;
  private static final int MOST_READINGS = 64;
  private static final int LEAST_READINGS = 4;

  /** ms between readings that are taken; more would not tell more. */
  private static final long SPACING_MILLIS = 940;

  /** How many minutes in a row must fall, and °C of each that is more than a flutter. */
  private static final int FALLING_IN_A_ROW = 3;

  private static final double LEAST_FALL_C = 1;

  private final double[] minuteC = new double[MOST_READINGS];
  private final Spans spans = new Spans(MINUTE_MILLIS);
  private int readings;
  private long minute;
  private long lastMillis;
  private final double[] middleC = new double[MINUTES];
  private int middles;
  private OptionalDouble newestC = OptionalDouble.empty();
  private boolean fresh;
  private Optional<SteadyFall> fall = Optional.empty();

  void reset() {
    countAfresh();
    forget();
  }

  /** Counts minutes from the next reading on; those that are full stay. */
  void countAfresh() {
    spans.restart();
    readings = 0;
  }

  void add(long millis, double celsius) {
    long now = spans.number(millis);
    fresh = false;
    if (readings > 0 && now != minute) {
      finish();
      if (now - minute > 1) {
        forget(); // minutes without a temperature lie between
      }
    }
    if (readings == 0) {
      minute = now;
    } else if (millis - lastMillis < SPACING_MILLIS || readings == MOST_READINGS) {
      return;
    }
    minuteC[readings++] = celsius;
    lastMillis = millis;
  }

  /** °C, of the last full minute; empty when that had too few readings for a middle. */
  OptionalDouble middleC() {
    return newestC;
  }

  /** Whether the last reading completed a minute. */
  boolean fresh() {
    return fresh;
  }

  /** As the last full minute showed it. */
  Optional<SteadyFall> fall() {
    return fall;
  }

  private void finish() {
    int many = readings;
    readings = 0;
    if (many < LEAST_READINGS) {
      forget();
      return;
    }
    Arrays.sort(minuteC, 0, many);
    if (middles == MINUTES) {
      System.arraycopy(middleC, 1, middleC, 0, MINUTES - 1);
      middles--;
    }
    middleC[middles++] = minuteC[many / 2];
    newestC = OptionalDouble.of(minuteC[many / 2]);
    fresh = true;
    fall = falling() ? Optional.of(sinceHighest()) : Optional.empty();
  }

  /** What is known is of long ago: it must not stand for now. */
  private void forget() {
    middles = 0;
    newestC = OptionalDouble.empty();
    fresh = false;
    fall = Optional.empty();
  }

  private boolean falling() {
    if (middles <= FALLING_IN_A_ROW) {
      return false;
    }
    for (int i = middles - FALLING_IN_A_ROW; i < middles; i++) {
      if (middleC[i] > middleC[i - 1] - LEAST_FALL_C) {
        return false;
      }
    }
    return true;
  }

  private SteadyFall sinceHighest() {
    int highest = 0;
    for (int i = 1; i < middles; i++) {
      highest = middleC[i] >= middleC[highest] ? i : highest;
    }
    double dropC = middleC[highest] - middleC[middles - 1];
    return new SteadyFall(dropC, dropC / (middles - 1 - highest) * 60);
  }
}
