package org.climbwatch.app;

import java.util.concurrent.locks.LockSupport;

/**
 * Keeps long work from having a processor to itself. Linux does not heed the priorities of Java's
 * threads unless the machine is told to, so the work lies still for a part of its time instead: a
 * fifth, and half where the readings have no other processor.
 */
final class TrialRests implements Runnable {
  private static final long WORK_NANOS = 20_000_000;

  private final long restNanos;
  private long restAt = System.nanoTime() + WORK_NANOS;

  /**
   * @param processors of the machine
   */
  TrialRests(int processors) {
    restNanos = processors > 1 ? WORK_NANOS / 4 : WORK_NANOS;
  }

  /** Rests when it is time to. */
  @Override
  public void run() {
    if (System.nanoTime() - restAt >= 0) {
      LockSupport.parkNanos(restNanos);
      restAt = System.nanoTime() + WORK_NANOS;
    }
  }
}
