package org.climbwatch.signal;

import java.util.OptionalDouble;

/** The highest temperature of the last few minutes, by a queue that only ever falls. */
final class RecentPeak {
  private final long windowMillis;
  private long[] millis = new long[16];
  private double[] temperatureC = new double[16];
  private int first;
  private int size;

  RecentPeak(double windowSeconds) {
    windowMillis = Math.round(windowSeconds * 1000);
  }

  void reset() {
    size = 0;
  }

  void add(long atMillis, double celsius) {
    int mask = millis.length - 1;
    while (size > 0 && atMillis - millis[first] > windowMillis) {
      first = (first + 1) & mask;
      size--;
    }
    while (size > 0 && temperatureC[(first + size - 1) & mask] <= celsius) {
      size--;
    }
    if (size == millis.length) {
      grow();
    }
    int place = (first + size) & (millis.length - 1);
    millis[place] = atMillis;
    temperatureC[place] = celsius;
    size++;
  }

  OptionalDouble peakC() {
    return size == 0 ? OptionalDouble.empty() : OptionalDouble.of(temperatureC[first]);
  }

  private void grow() {
    long[] moreMillis = new long[millis.length * 2];
    double[] moreC = new double[moreMillis.length];
    for (int i = 0; i < size; i++) {
      int place = (first + i) & (millis.length - 1);
      moreMillis[i] = millis[place];
      moreC[i] = temperatureC[place];
    }
    millis = moreMillis;
    temperatureC = moreC;
    first = 0;
  }
}
