package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a real UNIX datagram socket, held by socat in place of systemd. */
class ServiceNotifierIT {
  @TempDir Path folder;

  @Test
  void tellsThatItIsUpBeatsWhileAliveAndSaysWhenItStops() throws Exception {
    Path socket = folder.resolve("notify");
    Path heard = folder.resolve("heard");
    Process systemd =
        new ProcessBuilder("socat", "-u", "UNIX-RECV:" + socket, "CREATE:" + heard).start();
    try {
      await(() -> Files.exists(socket));

      ServiceNotifier notifier = new ServiceNotifier(socket.toString(), "100000", () -> true);
      notifier.ready();
      await(() -> text(heard).contains("READY=1") && text(heard).contains("WATCHDOG=1"));
      notifier.close();

      await(() -> text(heard).contains("STOPPING=1"));
      assertThat(text(heard)).startsWith("READY=1");
    } finally {
      systemd.destroyForcibly().waitFor();
    }
  }

  @Test
  void saysNothingWhereNobodyAsked() {
    ServiceNotifier notifier = new ServiceNotifier(null, null, () -> true);
    notifier.ready();
    notifier.close();
  }

  private interface Condition {
    boolean holds() throws Exception;
  }

  private static String text(Path file) throws Exception {
    return Files.exists(file) ? Files.readString(file) : "";
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
