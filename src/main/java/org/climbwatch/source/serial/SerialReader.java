package org.climbwatch.source.serial;

import java.util.function.BooleanSupplier;
import org.climbwatch.source.port.PortKeeper;
import org.climbwatch.source.port.PortLink;

/** Reads lines off a port for as long as it is open, and writes the ledger. */
final class SerialReader implements PortKeeper.Use {
  private final LineLedger ledger;

  SerialReader(LineLedger ledger) {
    this.ledger = ledger;
  }

  @Override
  public void opened() {
    ledger.opened(System.nanoTime());
  }

  @Override
  public void gone(String reason) {
    ledger.gone(reason);
  }

  @Override
  public void use(PortLink link, BooleanSupplier stopped) {
    LineAssembler assembler = new LineAssembler(new Recorder());
    byte[] bytes = new byte[256];
    while (!stopped.getAsBoolean()) {
      int count = link.read(bytes);
      if (count < 0) {
        return;
      }
      if (count > 0) {
        ledger.bytes(count, System.nanoTime());
        assembler.take(bytes, count);
      }
    }
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
