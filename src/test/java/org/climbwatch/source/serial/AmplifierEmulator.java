package org.climbwatch.source.serial;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * A microcontroller with a thermocouple amplifier, on a real pseudo-terminal: {@code socat} holds
 * the terminal, so it behaves like a USB adapter that can be pulled out and comes back under
 * another number behind the same name.
 *
 * <p>Speaks the text line format with a check of its own making, so that a mistake in the program's
 * check is not mirrored here.
 */
public final class AmplifierEmulator implements AutoCloseable {
  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(10);

  private final Path link;
  private final List<Process> placeholders = new ArrayList<>();
  private Process terminal;
  private Path lastDevice;
  private Thread sender;

  private AmplifierEmulator(Path link) {
    this.link = link;
  }

  /** Plugs an emulator in: the name leads to its terminal when this returns. */
  public static AmplifierEmulator start(Path link) {
    AmplifierEmulator emulator = new AmplifierEmulator(link);
    emulator.replug();
    return emulator;
  }

  /** The fields of a line, closed by length and check, with its LF. */
  public static String line(String fields) {
    return String.format(Locale.ROOT, "%s *%d:%02X\n", fields, fields.length(), check(fields));
  }

  /** The line of an amplifier's signal: emf in µV, cold junction in °C. */
  public static String line(double emfUv, double coldJunctionC) {
    return line(String.format(Locale.ROOT, "emf_uv=%.1f cj_c=%.2f", emfUv, coldJunctionC));
  }

  /** Remainder of the bytes, times x^8, on division by x^8 + x^2 + x + 1, as done by hand. */
  private static int check(String fields) {
    long remainder = 0;
    for (char c : (fields + "\0").toCharArray()) {
      remainder = remainder << 8 | c;
      for (int degree = 15; degree >= 8; degree--) {
        if ((remainder >> degree & 1) == 1) {
          remainder ^= 0x107L << (degree - 8);
        }
      }
    }
    return (int) remainder;
  }

  /**
   * Sends a signal again and again from a thread, in place of what was sent so before. Goes on over
   * unplugging and replugging.
   *
   * @param emfUvAt µV at so many seconds from now
   */
  public void sends(DoubleUnaryOperator emfUvAt, double coldJunctionC, Duration every) {
    sendsLines(seconds -> line(emfUvAt.applyAsDouble(seconds), coldJunctionC), every);
  }

  /** Sends text again and again, given by the seconds from now; the text brings its own LF. */
  public synchronized void sendsLines(DoubleFunction<String> textAt, Duration every) {
    fallsSilent();
    long start = System.nanoTime();
    sender =
        new Thread(
            () -> {
              try {
                while (true) {
                  send(textAt.apply((System.nanoTime() - start) / 1e9));
                  Thread.sleep(every.toMillis());
                }
              } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
              }
            },
            "amplifier-emulator");
    sender.setDaemon(true);
    sender.start();
  }

  /** Stops what {@link #sends} or {@link #sendsLines} began. */
  public synchronized void fallsSilent() {
    if (sender != null) {
      sender.interrupt();
      sender = null;
    }
  }

  /** Sends text as it is, once. While unplugged it is lost, as on a real wire. */
  public void send(String text) {
    send(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  /** Sends bytes as they are, once. */
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
    lastDevice = device();
    terminal.destroy();
    awaitThat(() -> !terminal.isAlive(), "socat to end");
    try {
      Files.deleteIfExists(link);
    } catch (IOException unexpected) {
      throw new UncheckedIOException(unexpected);
    }
    terminal = null;
  }

  /** Puts the device back: same name, another terminal number than it had last. */
  public synchronized void replug() {
    if (terminal != null) {
      throw new IllegalStateException("it is plugged in already");
    }
    terminal = plugIn();
    if (device().equals(lastDevice)) {
      // the kernel gives out the lowest free number: keep this one busy and take the next
      placeholders.add(terminal);
      terminal = plugIn();
    }
  }

  /** The terminal that the name leads to now. */
  public Path device() {
    try {
      return link.toRealPath();
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  private Process plugIn() {
    try {
      Files.deleteIfExists(link);
      Process socat =
          new ProcessBuilder("socat", "-u", "STDIN", "PTY,raw,echo=0,link=" + link)
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      awaitThat(() -> Files.exists(link, LinkOption.NOFOLLOW_LINKS), "socat to make " + link);
      return socat;
    } catch (IOException cannotStart) {
      throw new UncheckedIOException("socat is needed for this test", cannotStart);
    }
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
    fallsSilent();
    if (terminal != null) {
      placeholders.add(terminal);
      terminal = null;
    }
    placeholders.forEach(Process::destroy);
    // an ending socat takes its link away, which a test folder being deleted must not meet
    awaitThat(() -> placeholders.stream().noneMatch(Process::isAlive), "socat to end");
  }
}
