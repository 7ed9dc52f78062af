package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a real UNIX datagram socket, held by socat in place of systemd. */
class ServiceNotifierIT {
  @TempDir Path folder;
  private Process systemd;

  @AfterEach
  void stopListening() throws InterruptedException {
    if (systemd != null) {
      systemd.destroyForcibly().waitFor();
    }
  }

  @Test
  void tellsThatItIsUpBeatsWhileAliveAndSaysWhenItStops() throws Exception {
    Path socket = folder.resolve("notify");
    listen("UNIX-RECV:" + socket);
    await(() -> Files.exists(socket));

    try (ServiceNotifier notifier = notifier(socket.toString(), "100000")) {
      notifier.ready("serves http://127.0.0.1:8080/");
      await(() -> heard().contains("WATCHDOG=1WATCHDOG=1"));
    }

    await(() -> heard().endsWith("STOPPING=1"));
    assertThat(heard()).startsWith("READY=1\nSTATUS=serves http://127.0.0.1:8080/WATCHDOG=1");
  }

  /** systemd names such a socket with a leading '@': sd_notify(3). */
  @Test
  void reachesASocketThatHasNoFile() throws Exception {
    String name = "climbwatch-test-" + ProcessHandle.current().pid() + "-" + System.nanoTime();
    listen("ABSTRACT-RECV:" + name);
    await(() -> Files.readString(Path.of("/proc/net/unix")).contains("@" + name));

    try (ServiceNotifier notifier = notifier("@" + name, null)) {
      notifier.ready("up");
      await(() -> heard().equals("READY=1\nSTATUS=up"));
    }
  }

  @Test
  void watchdogIsNotBeatenWhileTheWorkStandsStill() throws Exception {
    Path socket = folder.resolve("notify");
    listen("UNIX-RECV:" + socket);
    await(() -> Files.exists(socket));
    AtomicInteger asked = new AtomicInteger();

    try (ServiceNotifier notifier =
        new ServiceNotifier(
            Map.of("NOTIFY_SOCKET", socket.toString(), "WATCHDOG_USEC", "10000"),
            () -> asked.incrementAndGet() < 0)) {
      notifier.ready("up");
      await(() -> asked.get() > 5);
    }

    await(() -> heard().endsWith("STOPPING=1"));
    assertThat(heard()).isEqualTo("READY=1\nSTATUS=upSTOPPING=1");
  }

  @Test
  void environmentThatMakesNoSenseStopsNothing() {
    for (String socket : new String[] {"", "/nowhere/notify", "vsock:2:1", "/" + "x".repeat(200)}) {
      try (ServiceNotifier notifier = notifier(socket, "soon")) {
        notifier.ready("up");
      }
    }
  }

  private static ServiceNotifier notifier(String socket, String watchdogMicros) {
    return new ServiceNotifier(
        watchdogMicros == null
            ? Map.of("NOTIFY_SOCKET", socket)
            : Map.of("NOTIFY_SOCKET", socket, "WATCHDOG_USEC", watchdogMicros),
        () -> true);
  }

  private void listen(String address) throws Exception {
    systemd =
        new ProcessBuilder("socat", "-u", address, "CREATE:" + folder.resolve("heard")).start();
  }

  private String heard() throws Exception {
    Path heard = folder.resolve("heard");
    return Files.exists(heard) ? Files.readString(heard) : "";
  }

  private interface Condition {
    boolean holds() throws Exception;
  }

  private static void await(Condition condition) throws Exception {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    while (!condition.holds()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError("waited in vain");
      }
      TimeUnit.MILLISECONDS.sleep(10);
    }
  }
}
