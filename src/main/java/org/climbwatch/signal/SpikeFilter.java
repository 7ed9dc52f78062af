package org.climbwatch.signal;

/**
 * Tells single wild readings from real steps.
 *
 * <p>A reading is a spike when it stands apart from the middle of the last five good ones by more
 * than a limit, and real after all once three in a row agree with one another: a burner turned up
 * moves a bare couple by tens of degrees within seconds and must not be hidden. A filter that has
 * refused ten in a row gives in, so that it can never starve what follows.
 */
final class SpikeFilter {
  private static final int REMEMBERED = 5;
  private static final int AGREEING = 3;
  private static final int MOST_REFUSED = 10;

  /** °C/s that the kiln itself may move away from the middle of the last readings. */
  private static final double OWN_PACE_C_PER_S = 1.0;

  /**
   * °C/s within a real step; gas shut off in a room fire moved bare couples by 5 (NIST gas-burner
   * data).
   */
  private static final double STEP_PACE_C_PER_S = 6.0;

  private final double spikeC;
  private final Recent good = new Recent(REMEMBERED);
  private final Recent refused = new Recent(AGREEING);
  private int refusedInARow;

  SpikeFilter(double spikeC) {
    this.spikeC = spikeC;
  }

  /** Whether the reading stands apart; it is then to be left out of what follows. */
  boolean isSpike(long millis, double temperatureC) {
    if (good.size < AGREEING || withinReach(millis, temperatureC)) {
      take(millis, temperatureC);
      return false;
    }
    refused.add(millis, temperatureC);
    refusedInARow++;
    if (refusedAgree() || refusedInARow >= MOST_REFUSED) {
      good.clear();
      take(millis, temperatureC);
      return false;
    }
    return true;
  }

  void reset() {
    good.clear();
    refused.clear();
    refusedInARow = 0;
  }

  private void take(long millis, double temperatureC) {
    good.add(millis, temperatureC);
    refused.clear();
    refusedInARow = 0;
  }

  private boolean withinReach(long millis, double temperatureC) {
    double seconds = (millis - good.middleMillis()) / 1000.0;
    double reachC = spikeC + OWN_PACE_C_PER_S * seconds;
    // whatever lies near all of them lies near their middle, which need not be looked for then
    return good.furthestC(temperatureC) <= reachC
        || Math.abs(temperatureC - good.medianC()) <= reachC;
  }

  private boolean refusedAgree() {
    if (refused.size < AGREEING) {
      return false;
    }
    double seconds = (refused.newestMillis() - refused.oldestMillis()) / 1000.0;
    return refused.spreadC() <= spikeC + STEP_PACE_C_PER_S * seconds;
  }

  /** The last few readings, oldest first. */
  private static final class Recent {
    private final long[] millis;
    private final double[] temperatureC;
    private final double[] sorted;
    private int size;

    Recent(int capacity) {
      millis = new long[capacity];
      temperatureC = new double[capacity];
      sorted = new double[capacity];
    }

    void add(long atMillis, double celsius) {
      if (size == millis.length) {
        System.arraycopy(millis, 1, millis, 0, size - 1);
        System.arraycopy(temperatureC, 1, temperatureC, 0, size - 1);
        size--;
      }
      millis[size] = atMillis;
      temperatureC[size] = celsius;
      size++;
    }

    void clear() {
      size = 0;
    }

    long oldestMillis() {
      return millis[0];
    }

    long newestMillis() {
      return millis[size - 1];
    }

    long middleMillis() {
      return millis[size / 2];
    }

    double furthestC(double celsius) {
      double furthest = 0;
      for (int i = 0; i < size; i++) {
        furthest = Math.max(furthest, Math.abs(celsius - temperatureC[i]));
      }
      return furthest;
    }

    double medianC() {
      for (int i = 0; i < size; i++) {
        double value = temperatureC[i];
        int j = i - 1;
        while (j >= 0 && sorted[j] > value) {
          sorted[j + 1] = sorted[j];
          j--;
        }
        sorted[j + 1] = value;
      }
      return sorted[size / 2];
    }

    double spreadC() {
      return Spread.of(temperatureC, 0, size);
    }
  }
}
