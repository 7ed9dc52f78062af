package org.climbwatch.source.modbus;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;
import org.climbwatch.source.modbus.ModbusSettings.Meaning;
import org.climbwatch.source.modbus.RtuExchange.Reply;
import org.climbwatch.source.port.AnswerLedger;
import org.climbwatch.source.port.Talker;
import org.climbwatch.source.port.Wire;

/** Asks one unit for all that makes a reading. A turn gives a whole reading or none. */
final class UnitTalker implements Talker {
  /** A unit that does not answer is asked less often, so that it leaves the line to the others. */
  private static final int PATIENCE_TIMEOUTS = 4;

  private final ModbusSettings settings;
  private final AnswerLedger ledger;
  private boolean openedBefore;
  private boolean inDoubt;
  private boolean answered = true;

  UnitTalker(ModbusSettings settings, AnswerLedger ledger) {
    this.settings = settings;
    this.ledger = ledger;
  }

  @Override
  public void opened() {
    // a line lost in the middle of a question may come back with its answer
    inDoubt = openedBefore;
    openedBefore = true;
    answered = true;
    ledger.opened(System.nanoTime());
  }

  @Override
  public void gone(String reason) {
    ledger.gone(reason);
  }

  @Override
  public void answerPending(Talker whose) {
    if (whose instanceof UnitTalker other && other.settings.unit() == settings.unit()) {
      inDoubt = true;
    }
  }

  @Override
  public Duration pause() {
    Duration patience = settings.timeout().multipliedBy(PATIENCE_TIMEOUTS);
    return answered || patience.compareTo(settings.pause()) < 0 ? settings.pause() : patience;
  }

  /** Stops a turn at the first question without an answer that can be used. */
  private static final class Unanswered extends Exception {
    final transient Reply reply;

    Unanswered(Reply reply) {
      super(null, null, false, false);
      this.reply = reply;
    }
  }

  @Override
  public Left turn(Wire wire) throws IOException {
    long timeoutNanos = settings.timeout().toNanos();
    RtuExchange exchange =
        new RtuExchange(wire, settings.unit(), settings.function(), timeoutNanos, ledger::oddity);
    try {
      Signal signal = signal(exchange);
      answered = true;
      ledger.answered(signal, "", wire.nanoTime());
      return Left.NOTHING;
    } catch (Unanswered unanswered) {
      return note(unanswered.reply, wire.nanoTime());
    }
  }

  private Left note(Reply reply, long nowNanos) {
    if (reply instanceof RtuExchange.Refused refused) {
      answered = true;
      String text = ExceptionText.of(refused.exception());
      ledger.answered(new Signal.Faulty(Fault.NO_VALUE), text, nowNanos);
      return Left.NOTHING;
    }
    RtuExchange.Nothing nothing = (RtuExchange.Nothing) reply;
    answered = nothing.heard();
    ledger.failed(nothing.why(), nothing.heard());
    return Left.ANSWER_PENDING;
  }

  private Signal signal(RtuExchange exchange) throws IOException, Unanswered {
    Optional<ModbusSettings.Status> status = settings.status();
    if (status.isPresent()) {
      byte[] bits = ask(exchange, status.get().address(), 1);
      int word = (int) RegisterFormat.UINT16.value(bits, WordOrder.HIGH_FIRST);
      if ((word & status.get().openCircuitBits()) != 0) {
        return new Signal.Faulty(Fault.OPEN_CIRCUIT);
      }
    }
    Register register = settings.value();
    double bare = register.bare(ask(exchange, register));
    if (settings.faultValues().contains(bare + 0.0) || Double.isNaN(bare)) {
      return new Signal.Faulty(Double.isNaN(bare) ? Fault.NO_VALUE : Fault.OPEN_CIRCUIT);
    }
    return signal(bare * register.scale(), coldJunctionC(exchange));
  }

  private OptionalDouble coldJunctionC(RtuExchange exchange) throws IOException, Unanswered {
    Optional<Register> register = settings.coldJunction().register();
    if (register.isEmpty()) {
      return settings.coldJunction().fixedC();
    }
    byte[] bytes = ask(exchange, register.get());
    return OptionalDouble.of(register.get().bare(bytes) * register.get().scale());
  }

  private Signal signal(double scaled, OptionalDouble coldJunctionC) {
    return settings.meaning() == Meaning.EMF_MV
        ? Signal.emf(scaled, coldJunctionC.orElseThrow())
        : Signal.linearised(scaled, coldJunctionC);
  }

  private byte[] ask(RtuExchange exchange, Register register) throws IOException, Unanswered {
    return ask(exchange, register.address(), register.format().registers());
  }

  private byte[] ask(RtuExchange exchange, int address, int count) throws IOException, Unanswered {
    Reply reply = exchange.ask(address, count, inDoubt);
    // from here on the answer is either there, or a new one is pending
    inDoubt = reply instanceof RtuExchange.Nothing;
    if (reply instanceof RtuExchange.Registers registers) {
      return registers.bytes();
    }
    throw new Unanswered(reply);
  }
}
