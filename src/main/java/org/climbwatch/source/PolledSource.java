package org.climbwatch.source;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Looks;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks at a device as often as it has something new, and gives the {@linkplain Looks middle} of
 * the looks since the last call.
 *
 * <p>A thread of its own owns the device, so one that gets stuck holds up nobody: it is a fault
 * once its time is up, and heals when it returns.
 */
public final class PolledSource implements Source {
  /** A device that has not returned from a look for so long does not answer. */
  public static final Duration STUCK = Duration.ofSeconds(3);

  private static final Logger LOG = LoggerFactory.getLogger(PolledSource.class);

  /** More than come in the longest interval; the oldest go first while nobody asks. */
  private static final int MOST_LOOKS = 4096;

  private static final long CLOSING_MILLIS = 200;

  private final Source device;
  private final String probe;
  private final long paceNanos;
  private final long stuckNanos;
  private final LongSupplier nanoTime;
  private final OutageLog outages;
  private final Thread thread;
  private final Deque<Reading> looks = new ArrayDeque<>();
  private Moment asked;
  private long askedNanos;
  private long returnedNanos;
  private String deviceLine;
  private volatile boolean closing;

  /**
   * @param device with a pace of its own; nobody else may use or close it
   * @param stuck for how long a look may last until it is a fault
   */
  public PolledSource(String probe, Source device, Duration stuck) {
    this(probe, device, stuck, System::nanoTime);
  }

  PolledSource(String probe, Source device, Duration stuck, LongSupplier nanoTime) {
    this.probe = probe;
    this.device = device;
    this.nanoTime = nanoTime;
    paceNanos = MainsApart.pace(device.pace()).toNanos();
    stuckNanos = stuck.toNanos();
    outages = new OutageLog(LOG, probe);
    deviceLine = device.describe();
    thread = new Thread(this::poll, "look-" + probe);
    thread.setDaemon(true);
    thread.setUncaughtExceptionHandler(
        (failed, bug) -> LOG.error("looking at \"{}\" has failed; restart the daemon", probe, bug));
  }

  /** The first call begins to look, and has nothing yet. */
  @Override
  public synchronized Optional<Reading> read(Moment at) {
    long now = nanoTime.getAsLong();
    boolean first = asked == null;
    asked = at;
    askedNanos = now;
    if (first) {
      returnedNanos = now;
      thread.start();
    }
    Optional<Reading> middle = Looks.middle(at, List.copyOf(looks));
    looks.clear();
    if (middle.isEmpty() && isStuck(now)) {
      outages.notHeard(Fault.NO_ANSWER, line(now), now);
      return Optional.of(Reading.faulty(at, probe, Fault.NO_ANSWER));
    }
    if (middle.isPresent()) {
      outages.heard(now);
    }
    return middle;
  }

  private boolean isStuck(long now) {
    return asked != null && now - returnedNanos >= stuckNanos;
  }

  private void poll() {
    long due = System.nanoTime();
    while (!closing) {
      take(device.read(moment()), device.describe());
      due = Math.max(due + paceNanos, System.nanoTime());
      waitUntil(due);
    }
    device.close();
  }

  private void waitUntil(long due) {
    long wait = due - System.nanoTime();
    while (wait > 0 && !closing) {
      LockSupport.parkNanos(wait);
      wait = due - System.nanoTime();
    }
  }

  private synchronized Moment moment() {
    return asked.plusMillis((nanoTime.getAsLong() - askedNanos) / 1_000_000);
  }

  private synchronized void take(Optional<Reading> look, String line) {
    returnedNanos = nanoTime.getAsLong();
    deviceLine = line;
    if (look.isPresent()) {
      if (looks.size() == MOST_LOOKS) {
        looks.removeFirst();
      }
      looks.addLast(look.get());
    }
  }

  @Override
  public synchronized String describe() {
    return line(nanoTime.getAsLong());
  }

  private String line(long now) {
    long seconds = (now - returnedNanos) / 1_000_000_000;
    return isStuck(now) ? deviceLine + "; has not answered for " + seconds + " s" : deviceLine;
  }

  /** A device that is stuck is closed when it returns, or left to the end of the program. */
  @Override
  public void close() {
    closing = true;
    if (thread.getState() == Thread.State.NEW) {
      device.close();
      return;
    }
    LockSupport.unpark(thread);
    try {
      thread.join(CLOSING_MILLIS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }
}
