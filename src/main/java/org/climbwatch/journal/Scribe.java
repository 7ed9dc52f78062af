package org.climbwatch.journal;

import java.sql.SQLException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Does the journal's writing on a thread of its own, one piece at a time: a disk that hangs, as a
 * dying memory card does, keeps nobody waiting for longer than a limit.
 *
 * <p>Between two pieces what they work on belongs to whoever calls here; while one is under way, to
 * the scribe alone.
 */
final class Scribe implements AutoCloseable {
  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread made = new Thread(work, "journal");
            made.setDaemon(true);
            return made;
          });
  private Future<?> underWay;

  /** Whether a piece has been begun and its end was not yet taken note of. */
  boolean isBusy() {
    return underWay != null;
  }

  /** Begins a piece of work; the one before must have ended. */
  void begin(Writer.Work work) {
    if (isBusy()) {
      throw new IllegalStateException("the piece before is still under way");
    }
    underWay =
        thread.submit(
            () -> {
              work.run();
              return null;
            });
  }

  /**
   * Waits for the end of what is under way.
   *
   * @return whether it has ended, and well
   * @throws SQLException when it has ended otherwise
   */
  boolean ends(long withinMillis) throws SQLException {
    boolean interrupted = false;
    try {
      while (true) {
        try {
          underWay.get(withinMillis, TimeUnit.MILLISECONDS);
          underWay = null;
          return true;
        } catch (InterruptedException again) {
          interrupted = true;
        } catch (TimeoutException late) {
          return false;
        } catch (ExecutionException failed) {
          underWay = null;
          throw cause(failed.getCause());
        }
      }
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static SQLException cause(Throwable cause) {
    if (cause instanceof RuntimeException bug) {
      throw bug;
    }
    if (cause instanceof Error error) {
      throw error;
    }
    return (SQLException) cause;
  }

  /** Takes no more work. */
  @Override
  public void close() {
    thread.shutdown();
  }
}
