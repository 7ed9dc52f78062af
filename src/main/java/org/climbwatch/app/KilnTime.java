package org.climbwatch.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import java.util.function.LongSupplier;

/**
 * The daemon's time: monotonic milliseconds since the machine's boot, and the wall clock beside it.
 * For the kiln model and recordings it may run faster than real time.
 */
final class KilnTime {
  private final double speed;
  private final LongSupplier wallClock;
  private long fastOffsetMillis;

  KilnTime(double speed) {
    this(speed, System::currentTimeMillis);
  }

  /**
   * With another clock on the wall.
   *
   * @param wallClock milliseconds since 1970
   */
  KilnTime(double speed, LongSupplier wallClock) {
    this.speed = speed;
    this.wallClock = wallClock;
    fastOffsetMillis = wallClock.getAsLong() - millis();
  }

  /** Monotonic milliseconds of kiln time. */
  long millis() {
    return (long) (System.nanoTime() / 1e6 * speed);
  }

  /** The next whole interval of the boot, so that a run after a restart reads at the same beat. */
  long nextBeat(long intervalMillis) {
    return -Math.floorDiv(-millis(), intervalMillis) * intervalMillis;
  }

  /** Monotonic milliseconds of real time. */
  static long realMillis() {
    return System.nanoTime() / 1_000_000;
  }

  double speed() {
    return speed;
  }

  /** Wall time less monotonic time: moves when the clock is set. Fast time follows its start. */
  long wallOffsetMillis() {
    return speed == 1 ? wallClock.getAsLong() - millis() : fastOffsetMillis;
  }

  /** Fast time goes on where an earlier run of the same boot left it, so that no past moves. */
  void goOnFrom(long wallOffsetMillis) {
    fastOffsetMillis = wallOffsetMillis;
  }

  /** What the operating system calls this boot; fast time is a world of its own. */
  String bootId() {
    String boot;
    try {
      boot = Files.readString(Path.of("/proc/sys/kernel/random/boot_id")).strip();
    } catch (IOException notLinux) {
      boot = UUID.randomUUID().toString();
    }
    return speed == 1 ? boot : boot + " x" + speed;
  }
}
