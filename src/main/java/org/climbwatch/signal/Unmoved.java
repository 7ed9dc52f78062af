package org.climbwatch.signal;

/** For how long a signal has not moved by a single bit, and how fine its steps are. */
final class Unmoved {
  private boolean known;
  private double last;
  private long movedMillis;
  private double finestC = Double.POSITIVE_INFINITY;
  private double lastC;

  /** Begins anew; how fine the steps are is not forgotten. */
  void reset() {
    known = false;
  }

  /**
   * @param raw what the instrument said: mV, or °C where it linearises
   * @param celsius °C, of the same reading
   */
  void add(long millis, double raw, double celsius) {
    if (!known || raw != last) {
      if (known && celsius != lastC) {
        finestC = Math.min(finestC, Math.abs(celsius - lastC));
      }
      movedMillis = millis;
      last = raw;
      known = true;
    }
    lastC = celsius;
  }

  /** s since it moved. */
  double seconds(long millis) {
    return known ? (millis - movedMillis) / 1000.0 : 0;
  }

  /** °C, the smallest move seen; infinite before it has moved at all. */
  double finestC() {
    return finestC;
  }
}
