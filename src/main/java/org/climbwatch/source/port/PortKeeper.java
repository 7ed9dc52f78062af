package org.climbwatch.source.port;

import java.io.IOException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps a serial port open on a thread of its own, until it is told to stop: opens the port by its
 * name, has it used until it is lost, and tries again each second.
 */
public final class PortKeeper implements AutoCloseable {
  /** What is done with the port; all calls are of the keeper's thread. */
  public interface Use {
    /** The port is open, for the first time or again. */
    void opened();

    /**
     * Uses the port until it is lost, then throws or returns; or until told to stop, then returns.
     */
    void use(PortLink link, BooleanSupplier stopped) throws IOException;

    /**
     * The port can't be opened or was lost.
     *
     * @param reason for people: which port, why, what to do
     */
    void gone(String reason);
  }

  private static final Logger LOG = LoggerFactory.getLogger(PortKeeper.class);
  private static final long RETRY_MILLIS = 1000;
  private static final long CLOSING_MILLIS = 1000;

  private final PortSettings settings;
  private final Use use;
  private final CountDownLatch stop = new CountDownLatch(1);
  private final Thread thread;

  /** Starts at once; a port that is missing is waited for. */
  public PortKeeper(String threadName, PortSettings settings, Use use) {
    this.settings = settings;
    this.use = use;
    this.thread = new Thread(this::run, threadName);
    thread.setDaemon(true);
  }

  public void start() {
    thread.start();
  }

  private boolean stopped() {
    return stop.getCount() == 0;
  }

  private void run() {
    try {
      do {
        session();
      } while (!stop.await(RETRY_MILLIS, TimeUnit.MILLISECONDS));
    } catch (InterruptedException toldToStop) {
      Thread.currentThread().interrupt();
    }
  }

  /** One opening of the port until it is lost. Nothing that goes wrong here may end the watch. */
  private void session() {
    try (PortLink link = PortLink.open(settings)) {
      use.opened();
      use.use(link, this::stopped);
      if (!stopped()) {
        use.gone(settings.port() + " was lost; check plug and supply");
      }
    } catch (IOException cannotOpen) {
      use.gone(cannotOpen.getMessage());
    } catch (RuntimeException | LinkageError unexpected) {
      // LinkageError: the library's native part could not be unpacked or loaded
      use.gone(settings.port() + " can't be used: " + unexpected);
      LOG.debug("serial port {}", settings.port(), unexpected);
    }
  }

  /** Stops using the port and lets go of it, within a second. */
  @Override
  public void close() {
    stop.countDown();
    try {
      thread.join(CLOSING_MILLIS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }
}
