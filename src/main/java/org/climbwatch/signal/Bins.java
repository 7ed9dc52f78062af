package org.climbwatch.signal;

/** The last hour of the curve as means over twenty seconds each, the oldest first. */
final class Bins {
  static final int BIN_S = 20;

  /** An hour. */
  static final int MOST = 181;

  private static final long BIN_MILLIS = BIN_S * 1000L;

  private final Spans spans = new Spans(BIN_MILLIS);
  private final long[] number = new long[MOST];
  private final double[] meanC = new double[MOST];
  private int size;
  private long openNumber;
  private double openSum;
  private int openCount;

  /** Takes a reading; whether that closed a bin. */
  boolean add(long millis, double celsius) {
    long now = spans.number(millis);
    boolean closed = openCount > 0 && now != openNumber;
    if (closed) {
      close();
    }
    openNumber = now;
    openSum += celsius;
    openCount++;
    return closed;
  }

  void clear() {
    spans.restart();
    size = 0;
    openSum = 0;
    openCount = 0;
  }

  /** Keeps the newest so many only. */
  void keepNewest(int count) {
    int dropped = size - Math.min(count, size);
    System.arraycopy(number, dropped, number, 0, size - dropped);
    System.arraycopy(meanC, dropped, meanC, 0, size - dropped);
    size -= dropped;
  }

  int size() {
    return size;
  }

  double celsius(int i) {
    return meanC[i];
  }

  /** Bins from the newest back to this one. */
  int lag(int i) {
    return (int) (number[size - 1] - number[i]);
  }

  /** How many of the newest lie within so many bins' time. */
  int within(int bins) {
    int count = 0;
    while (count < size && lag(size - 1 - count) < bins) {
      count++;
    }
    return count;
  }

  private void close() {
    if (size == MOST) {
      keepNewest(MOST - 1);
    }
    number[size] = openNumber;
    meanC[size] = openSum / openCount;
    size++;
    openSum = 0;
    openCount = 0;
    // what lies an hour back by time is too old, however many bins are missing between
    keepNewest(within(MOST));
  }
}
