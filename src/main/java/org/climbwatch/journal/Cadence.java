package org.climbwatch.journal;

/** When what waits is due: before the first of it has waited for 5 s. Times are monotonic ms. */
final class Cadence {
  private static final long COMMIT_EVERY_MS = 5_000;

  private long calledAtMs;
  private long dueAtMs;
  private boolean dueKnown;

  /** Whether the next call would be too late; to be asked after each reading. */
  boolean due(long nowMs, boolean somethingWaits) {
    long untilNextCallMs = nowMs - calledAtMs;
    calledAtMs = nowMs;
    if (!somethingWaits) {
      return false;
    }
    if (!dueKnown) {
      dueKnown = true;
      dueAtMs = nowMs + COMMIT_EVERY_MS;
      return false;
    }
    return nowMs + untilNextCallMs >= dueAtMs;
  }

  /** A commit was tried. */
  void tried() {
    dueKnown = false;
  }
}
