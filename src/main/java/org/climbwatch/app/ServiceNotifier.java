package org.climbwatch.app;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells systemd that the daemon is up, and beats its watchdog while the sampler goes round.
 *
 * <p>The protocol of sd_notify(3): datagrams to the UNIX socket named in {@code NOTIFY_SOCKET}.
 * Java 17 has no UNIX datagrams, so three calls go to libc. Where nobody asked to be told, libc is
 * not even loaded; where telling fails, the kiln is watched all the same.
 */
final class ServiceNotifier implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ServiceNotifier.class);
  private static final int AF_UNIX = 1;
  private static final int SOCK_DGRAM = 2;

  /** Of a path in a socket's address, its end mark included: unix(7). */
  private static final int MOST_PATH_BYTES = 108;

  private final Optional<byte[]> address;
  private final long beatMillis;
  private final BooleanSupplier alive;
  private volatile boolean stopping;

  /** The three calls of libc. */
  interface Libc extends Library {
    int socket(int domain, int type, int protocol);

    long sendto(int fd, byte[] data, long length, int flags, byte[] address, int addressLength);

    int close(int fd);
  }

  /**
   * @param environment of the process: {@code NOTIFY_SOCKET}, {@code WATCHDOG_USEC}, {@code
   *     WATCHDOG_PID}
   * @param alive whether the work goes on; the watchdog is beaten only then
   */
  ServiceNotifier(Map<String, String> environment, BooleanSupplier alive) {
    this.alive = alive;
    address = address(environment.getOrDefault("NOTIFY_SOCKET", ""));
    beatMillis = address.isPresent() ? beatMillis(environment) : 0;
  }

  /**
   * All is up; beats the watchdog from now on.
   *
   * @param status what {@code systemctl status} shows, one line
   */
  void ready(String status) {
    send("READY=1\nSTATUS=" + status.replace('\n', ' '));
    if (beatMillis > 0) {
      Thread beat = new Thread(this::beat, "watchdog");
      beat.setDaemon(true);
      beat.start();
    }
  }

  @Override
  public void close() {
    stopping = true;
    send("STOPPING=1");
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
    if (address.isEmpty()) {
      return;
    }
    try {
      if (!sent(Native.load("c", Libc.class), message, address.get())) {
        LOG.warn("the service manager did not take \"{}\"", message.replace('\n', ' '));
      }
    } catch (LinkageError noLibrary) {
      LOG.warn("the service manager cannot be told anything: {}", noLibrary.getMessage());
    }
  }

  private static boolean sent(Libc libc, String message, byte[] address) {
    int fd = libc.socket(AF_UNIX, SOCK_DGRAM, 0);
    if (fd < 0) {
      return false;
    }
    byte[] data = message.getBytes(StandardCharsets.UTF_8);
    long count = libc.sendto(fd, data, data.length, 0, address, address.length);
    libc.close(fd);
    return count == data.length;
  }

  /** struct sockaddr_un: family in the machine's byte order, then the path; '@' stands for NUL. */
  private static Optional<byte[]> address(String socket) {
    byte[] path = socket.getBytes(StandardCharsets.UTF_8);
    if (path.length == 0) {
      return Optional.empty();
    }
    boolean unnamed = path[0] == '@';
    if ((!unnamed && path[0] != '/') || path.length >= MOST_PATH_BYTES) {
      LOG.warn("NOTIFY_SOCKET \"{}\" is no UNIX socket; the service manager is not told", socket);
      return Optional.empty();
    }
    byte[] address = new byte[2 + path.length + (unnamed ? 0 : 1)];
    // little-endian, as every machine with Raspberry Pi OS or Debian on x86 is
    address[0] = AF_UNIX;
    System.arraycopy(path, 0, address, 2, path.length);
    if (unnamed) {
      address[2] = 0;
    }
    return Optional.of(address);
  }

  /** Half the allowed time, as sd_watchdog_enabled(3) advises; 0 when no beat is waited for. */
  private static long beatMillis(Map<String, String> environment) {
    String micros = environment.getOrDefault("WATCHDOG_USEC", "0");
    String pid = environment.getOrDefault("WATCHDOG_PID", "" + ProcessHandle.current().pid());
    if (!pid.equals("" + ProcessHandle.current().pid())) {
      return 0;
    }
    try {
      return Long.parseLong(micros) / 2000;
    } catch (NumberFormatException notANumber) {
      LOG.warn("WATCHDOG_USEC \"{}\" is no number; the watchdog is not beaten", micros);
      return 0;
    }
  }
}
