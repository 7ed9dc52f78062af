package org.climbwatch.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The device gives a look when the test hands it one, and hangs until then. */
@Timeout(20)
class PolledSourceTest {
  private static final Duration STUCK = Duration.ofSeconds(3);

  /** Hangs in each look until it is handed one. */
  private static final class HandFed implements Source {
    private final SynchronousQueue<Optional<Reading>> next = new SynchronousQueue<>();
    private final CountDownLatch closed = new CountDownLatch(1);
    private final Semaphore entered = new Semaphore(0);
    private volatile Thread owner;
    private volatile String state = "waiting";

    @Override
    public Optional<Reading> read(Moment at) {
      owner = Thread.currentThread();
      entered.release();
      try {
        Optional<Reading> look = next.take();
        state = "reading";
        return look;
      } catch (InterruptedException interrupted) {
        throw new IllegalStateException("a device in the kernel is not interrupted", interrupted);
      }
    }

    @Override
    public Duration pace() {
      return Duration.ofMillis(1);
    }

    @Override
    public String describe() {
      return "device: " + state;
    }

    @Override
    public void close() {
      closed.countDown();
    }

    /** A look and an empty one behind it; both have been kept when the next has begun. */
    private void give(Reading look) throws InterruptedException {
      entered.acquire();
      next.put(Optional.of(look));
      entered.acquire();
      next.put(Optional.empty());
      entered.acquire();
      entered.release();
    }
  }

  private final HandFed device = new HandFed();
  private final AtomicLong nanos = new AtomicLong();
  private final PolledSource source = new PolledSource("upper", device, STUCK, nanos::get);
  private long millis = 1000;

  @AfterEach
  void letTheDeviceGo() throws InterruptedException {
    source.close();
    while (device.owner != null && device.owner.isAlive()) {
      device.next.offer(Optional.empty(), 1, TimeUnit.MILLISECONDS);
    }
  }

  @Test
  void theLooksOfAnIntervalBecomeOneReadingAtTheMomentAskedFor() throws InterruptedException {
    assertThat(read()).isEmpty();
    device.give(emf(40));
    device.give(emf(75));
    device.give(emf(40.2));

    assertThat(read()).contains(Reading.emf(new Moment(3, millis), "upper", 40.2, 25, 3, 0.2965));
    assertThat(read()).as("each look counts once").isEmpty();
  }

  @Test
  void aSparkThatTheChipCallsAnOpenCircuitDoesNotLoseTheReading() throws InterruptedException {
    read();
    device.give(emf(40));
    device.give(Reading.faulty(new Moment(3, 0), "upper", Fault.OPEN_CIRCUIT));
    device.give(emf(40));

    assertThat(read()).contains(Reading.emf(new Moment(3, millis), "upper", 40, 25, 2, 0));
  }

  @Test
  void aDeviceThatHangsBlocksNobodyIsAFaultInTimeAndHealsByItself() throws InterruptedException {
    read();
    device.give(emf(40));
    read();

    pass(2.9);
    assertThat(read()).isEmpty();
    pass(0.1);
    assertThat(read()).contains(Reading.faulty(new Moment(3, millis), "upper", Fault.NO_ANSWER));
    pass(60);
    assertThat(source.describe()).isEqualTo("device: reading; has not answered for 63 s");
    assertThat(read()).isPresent();

    device.give(emf(41));
    assertThat(read()).contains(Reading.emf(new Moment(3, millis), "upper", 41, 25));
    assertThat(source.describe()).isEqualTo("device: reading");
  }

  @Test
  void aDeviceThatHangsFromTheFirstLookOnIsAFaultToo() {
    assertThat(read()).isEmpty();

    pass(3);

    assertThat(read()).isPresent();
  }

  /** Its reading might come in the middle of a transfer of the same device. */
  @Test
  void closingWaitsForNoDeviceThatHangsAndLeavesItsClosingToItsOwnThread() throws Exception {
    read();
    device.give(emf(40));

    device.entered.acquire();

    source.close();
    assertThat(device.closed.getCount()).isEqualTo(1);

    device.next.put(Optional.empty());
    assertThat(device.closed.await(10, TimeUnit.SECONDS)).isTrue();
  }

  @Test
  void oneThatWasNeverReadIsClosedAtOnce() {
    source.close();

    assertThat(device.closed.getCount()).isZero();
  }

  private Optional<Reading> read() {
    millis += 1000;
    return source.read(new Moment(3, millis));
  }

  private void pass(double seconds) {
    nanos.addAndGet((long) (seconds * 1e9));
  }

  private static Reading emf(double emfMv) {
    return Reading.emf(new Moment(3, 0), "upper", emfMv, 25);
  }
}
