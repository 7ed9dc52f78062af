package org.climbwatch.signal;

/**
 * Equal spans of time, counted from the first moment asked for. The same readings fall into the
 * same spans wherever a clock has its zero, so that a recording tells what the daemon told.
 */
final class Spans {
  private final long spanMillis;
  private boolean begun;
  private long firstMillis;

  Spans(long spanMillis) {
    this.spanMillis = spanMillis;
  }

  /** Counts from the next moment on. */
  void restart() {
    begun = false;
  }

  /** The number of the span that a moment lies in. */
  long number(long millis) {
    if (!begun) {
      begun = true;
      firstMillis = millis;
    }
    return Math.floorDiv(millis - firstMillis, spanMillis);
  }
}
