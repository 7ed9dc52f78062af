package org.climbwatch.source.port;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/**
 * A device on a real pseudo-terminal that hears and speaks: {@code socat} holds the terminal, so it
 * behaves like a USB adapter that can be pulled out and comes back under another number behind the
 * same name. What it hears is handled on one thread, in order, as in a small microcontroller.
 */
public final class PtyDevice implements AutoCloseable {
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(10);

  /** What the device does with what it hears. */
  @FunctionalInterface
  public interface Hearing {
    void heard(byte[] bytes) throws InterruptedException;
  }

  private final Path link;
  private final List<Process> placeholders = new ArrayList<>();
  private Hearing hearing = bytes -> {};
  private Process terminal;
  private Path lastDevice;

  public PtyDevice(Path link) {
    this.link = link;
  }

  public synchronized void hears(Hearing newHearing) {
    hearing = newHearing;
  }

  /** Sends bytes as they are. While unplugged they are lost, as on a real wire. */
  public synchronized void send(byte[] bytes) {
    if (terminal == null) {
      return;
    }
    try {
      OutputStream wire = terminal.getOutputStream();
      wire.write(bytes);
      wire.flush();
    } catch (IOException broken) {
      throw new UncheckedIOException("socat has died", broken);
    }
  }

  /** Pulls the device out: terminal and name vanish. */
  public synchronized void unplug() {
    try {
      lastDevice = link.toRealPath();
      terminal.destroy();
      awaitThat(() -> !terminal.isAlive(), "socat to end");
      Files.deleteIfExists(link);
    } catch (IOException unexpected) {
      throw new UncheckedIOException(unexpected);
    }
    terminal = null;
  }

  /** Puts the device in: the name leads to its terminal, of another number than it had last. */
  public synchronized void plugIn() {
    try {
      terminal = start();
      if (link.toRealPath().equals(lastDevice)) {
        // the kernel gives out the lowest free number: keep this one busy and take the next
        placeholders.add(terminal);
        terminal = start();
      }
    } catch (IOException cannotStart) {
      throw new UncheckedIOException("socat is needed for this test", cannotStart);
    }
    Process mine = terminal;
    Thread ear = new Thread(() -> listen(mine.getInputStream()), "pty-device");
    ear.setDaemon(true);
    ear.start();
  }

  private void listen(InputStream from) {
    byte[] bytes = new byte[1024];
    try {
      for (int count = from.read(bytes); count > 0; count = from.read(bytes)) {
        current().heard(Arrays.copyOf(bytes, count));
      }
    } catch (IOException unplugged) {
      // the end of this terminal
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized Hearing current() {
    return hearing;
  }

  private Process start() throws IOException {
    Files.deleteIfExists(link);
    Process socat =
        new ProcessBuilder("socat", "STDIO", "PTY,raw,echo=0,link=" + link)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    awaitThat(() -> Files.exists(link, LinkOption.NOFOLLOW_LINKS), "socat to make " + link);
    return socat;
  }

  private static void awaitThat(BooleanSupplier condition, String what) {
    long deadline = System.nanoTime() + PATIENCE_NANOS;
    while (!condition.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new IllegalStateException("waited 10 s for " + what);
      }
      LockSupport.parkNanos(1_000_000);
    }
  }

  @Override
  public synchronized void close() {
    if (terminal != null) {
      placeholders.add(terminal);
      terminal = null;
    }
    placeholders.forEach(Process::destroy);
    // an ending socat takes its link away, which a test folder being deleted must not meet
    awaitThat(() -> placeholders.stream().noneMatch(Process::isAlive), "socat to end");
  }
}
