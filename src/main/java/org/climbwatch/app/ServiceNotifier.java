package org.climbwatch.app;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells systemd that the daemon is up, and beats its watchdog while the sampler goes round.
 *
 * <p>The protocol of sd_notify(3): datagrams to the UNIX socket named in {@code NOTIFY_SOCKET}.
 * Java 17 has no UNIX datagrams, so the three calls go to libc.
 */
final class ServiceNotifier implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ServiceNotifier.class);
  private static final int AF_UNIX = 1;
  private static final int SOCK_DGRAM = 2;

  /** The kernel's limit of a UNIX socket's path, unix(7). */
  private static final int MOST_PATH_BYTES = 108;

  private final String socket;
  private final BooleanSupplier alive;
  private final long beatMillis;
  private volatile boolean stopping;

  /** The three calls of libc. */
  interface Libc extends Library {
    int socket(int domain, int type, int protocol);

    long sendto(int fd, byte[] data, long length, int flags, byte[] address, int addressLength);

    int close(int fd);
  }

  ServiceNotifier(BooleanSupplier alive) {
    this(System.getenv("NOTIFY_SOCKET"), System.getenv("WATCHDOG_USEC"), alive);
  }

  ServiceNotifier(String socket, String watchdogMicros, BooleanSupplier alive) {
    this.socket = socket;
    this.alive = alive;
    // half the allowed time, as sd_watchdog_enabled(3) advises
    beatMillis = watchdogMicros == null ? 0 : Long.parseLong(watchdogMicros) / 2000;
  }

  void ready() {
    if (socket == null) {
      return;
    }
    send("READY=1");
    if (beatMillis > 0) {
      Thread beat = new Thread(this::beat, "watchdog");
      beat.setDaemon(true);
      beat.start();
    }
  }

  @Override
  public void close() {
    stopping = true;
    if (socket != null) {
      send("STOPPING=1");
    }
  }

  private void beat() {
    try {
      while (!stopping) {
        if (alive.getAsBoolean()) {
          send("WATCHDOG=1");
        }
        Thread.sleep(beatMillis);
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void send(String message) {
    Libc libc = Native.load("c", Libc.class);
    int fd = libc.socket(AF_UNIX, SOCK_DGRAM, 0);
    if (fd < 0) {
      LOG.warn("cannot tell the service manager {}: no socket", message);
      return;
    }
    byte[] data = message.getBytes(StandardCharsets.UTF_8);
    byte[] address = address();
    if (libc.sendto(fd, data, data.length, 0, address, address.length) < 0) {
      LOG.warn("cannot tell the service manager {}: {} does not take it", message, socket);
    }
    libc.close(fd);
  }

  /** struct sockaddr_un: family in the machine's byte order, then the path; '@' stands for NUL. */
  private byte[] address() {
    byte[] path = socket.getBytes(StandardCharsets.UTF_8);
    int length = Math.min(path.length, MOST_PATH_BYTES);
    byte[] address = new byte[2 + length];
    address[0] = AF_UNIX;
    System.arraycopy(path, 0, address, 2, length);
    if (path[0] == '@') {
      address[2] = 0;
      return address;
    }
    return Arrays.copyOf(address, address.length + 1);
  }
}
