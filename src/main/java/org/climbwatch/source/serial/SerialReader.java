package org.climbwatch.source.serial;

import java.io.IOException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps a serial port open and its ledger written, until it is told to stop: opens the port by its
 * name, reads until it is lost, and tries again each second. Runs on a thread of its own.
 */
final class SerialReader implements Runnable {
  private static final Logger LOG = LoggerFactory.getLogger(SerialReader.class);
  private static final long RETRY_MILLIS = 1000;

  private final SerialSettings settings;
  private final LineLedger ledger;
  private final CountDownLatch stop = new CountDownLatch(1);

  SerialReader(SerialSettings settings, LineLedger ledger) {
    this.settings = settings;
    this.ledger = ledger;
  }

  void stop() {
    stop.countDown();
  }

  @Override
  public void run() {
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
    try (SerialLink link = SerialLink.open(settings)) {
      ledger.opened(System.nanoTime());
      if (pump(link) == End.LOST) {
        ledger.gone(settings.port() + " was lost; check plug and supply");
      }
    } catch (IOException cannotOpen) {
      ledger.gone(cannotOpen.getMessage());
    } catch (RuntimeException | LinkageError unexpected) {
      // LinkageError: the library's native part could not be unpacked or loaded
      ledger.gone(settings.port() + " can't be used: " + unexpected);
      LOG.debug("serial port {}", settings.port(), unexpected);
    }
  }

  private enum End {
    LOST,
    STOPPED
  }

  private End pump(SerialLink link) {
    LineAssembler assembler = new LineAssembler(new Recorder());
    byte[] bytes = new byte[256];
    while (stop.getCount() > 0) {
      int count = link.read(bytes);
      if (count < 0) {
        return End.LOST;
      }
      if (count > 0) {
        ledger.bytes(count, System.nanoTime());
        assembler.take(bytes, count);
      }
    }
    return End.STOPPED;
  }

  private final class Recorder implements LineAssembler.Lines {
    @Override
    public void line(byte[] line, boolean first) {
      TextLine.Decoded decoded = TextLine.decode(line);
      if (decoded instanceof TextLine.Accepted accepted) {
        ledger.accepted(accepted.signal(), System.nanoTime());
      } else if (decoded instanceof TextLine.Declined declined && !first) {
        // the first is mostly the tail of a line that began before the port was open: no error
        ledger.declined(declined.why());
      }
    }

    @Override
    public void tooLong() {
      ledger.declined(Decline.TOO_LONG);
    }
  }
}
