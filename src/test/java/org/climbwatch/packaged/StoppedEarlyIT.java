package org.climbwatch.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.io.TempDir;

/** Told to stop in the middle of its start: no failure, and nothing is left half done. */
class StoppedEarlyIT {
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(60);

  @TempDir Path folder;

  @RepeatedTest(4)
  void leavesWellAndClosesTheJournal() throws Exception {
    Path data = folder.resolve("data");
    Path log = folder.resolve("run.log");
    Process run =
        new ProcessBuilder(
                DaemonProcess.command("run", "--data", data.toString(), "--listen", "127.0.0.1:0"))
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    long since = System.nanoTime();
    while (!Files.exists(data.resolve("journal.sqlite"))) {
      assertThat(run.isAlive()).as(() -> text(log)).isTrue();
      assertThat(System.nanoTime() - since).isLessThan(PATIENCE_NANOS);
      LockSupport.parkNanos(1_000_000);
    }

    run.destroy();

    assertThat(run.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(run.exitValue()).as(() -> text(log)).isZero();
    assertThat(text(log)).doesNotContain("Exception").doesNotContain("stopped in the middle");
    assertThat(data.resolve("journal.sqlite-wal")).doesNotExist();
  }

  private static String text(Path log) {
    try {
      return Files.readString(log);
    } catch (java.io.IOException gone) {
      return gone.toString();
    }
  }
}
