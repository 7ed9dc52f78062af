package org.climbwatch.source.scpi;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;
import org.climbwatch.source.port.AnswerLedger;
import org.climbwatch.source.port.Talker;
import org.climbwatch.source.port.Wire;

/** Asks an instrument for its value, after a greeting once the line is open. */
final class ScpiTalker implements Talker {
  /** An error that no question of ours has caused is shown after so long at the latest. */
  private static final long ERRORS_EVERY_NANOS = Duration.ofMinutes(1).toNanos();

  private static final int LONGEST_IDENTITY = 80;
  private static final double MV_PER_V = 1000;

  private final ScpiSettings settings;
  private final AnswerLedger ledger;
  private final ErrorQueue errors;
  private volatile String identity = "";
  private boolean greeted;
  private boolean inStep;
  private long errorsReadNanos;

  ScpiTalker(ScpiSettings settings, AnswerLedger ledger) {
    this.settings = settings;
    this.ledger = ledger;
    this.errors = new ErrorQueue("SCPI instrument on " + settings.line().port());
  }

  /** Which instrument, for people. */
  String describe() {
    String who = identity.isEmpty() ? "" : " \"" + identity + "\"";
    return "SCPI instrument" + who + " on " + settings.line().describe() + errors.describe();
  }

  @Override
  public void opened() {
    greeted = false;
    inStep = false;
    ledger.opened(System.nanoTime());
  }

  @Override
  public void gone(String reason) {
    ledger.gone(reason);
  }

  @Override
  public void answerPending(Talker whose) {
    inStep = false;
  }

  @Override
  public Duration pause() {
    return settings.pause();
  }

  @Override
  public Left turn(Wire wire) throws IOException {
    Dialogue dialogue = new Dialogue(wire, settings.timeout().toNanos(), ledger::oddity);
    if (!dialogue.hush()) {
      ledger.failed("babble", true);
      return Left.ANSWER_PENDING;
    }
    boolean due = wire.nanoTime() - errorsReadNanos >= ERRORS_EVERY_NANOS;
    if ((due || !inStep) && !readErrors(dialogue, wire)) {
      return fail(dialogue);
    }
    if (!greeted && !greet(dialogue, wire)) {
      return fail(dialogue);
    }
    Optional<Signal> signal = signal(dialogue);
    if (signal.isEmpty()) {
      return fail(dialogue);
    }
    boolean value = !(signal.get() instanceof Signal.Faulty faulty) || !noValue(faulty.fault());
    // whoever gives no value may have an error to tell: looked for in the next turn
    inStep = value;
    ledger.answered(signal.get(), value ? "" : "not-a-number", wire.nanoTime());
    return Left.NOTHING;
  }

  private static boolean noValue(Fault fault) {
    return fault == Fault.NO_VALUE;
  }

  private Left fail(Dialogue dialogue) {
    inStep = false;
    ledger.failed(dialogue.heard() ? "unreadable" : "timeout", dialogue.heard());
    return Left.ANSWER_PENDING;
  }

  private boolean readErrors(Dialogue dialogue, Wire wire) throws IOException {
    errorsReadNanos = wire.nanoTime();
    return errors.read(dialogue, ledger::oddity);
  }

  private boolean greet(Dialogue dialogue, Wire wire) throws IOException {
    Optional<String> answer = dialogue.ask("*IDN?");
    if (answer.isEmpty()) {
      return false;
    }
    String plain = answer.get().strip().replaceAll("[^ -!#-~]", "?");
    identity = plain.substring(0, Math.min(plain.length(), LONGEST_IDENTITY));
    for (String command : settings.setup()) {
      dialogue.send(command);
    }
    greeted = settings.setup().isEmpty() || readErrors(dialogue, wire);
    return greeted;
  }

  /** The value as a signal, or empty when an answer is missing or no number. */
  private Optional<Signal> signal(Dialogue dialogue) throws IOException {
    NumericAnswer value = number(dialogue, settings.query());
    OptionalDouble coldJunctionC = settings.coldJunction().fixedC();
    Optional<String> coldQuery = settings.coldJunction().query();
    if (value instanceof NumericAnswer.Value && coldQuery.isPresent()) {
      NumericAnswer cold = number(dialogue, coldQuery.get());
      if (!(cold instanceof NumericAnswer.Value known)) {
        return special(cold);
      }
      coldJunctionC = OptionalDouble.of(known.number());
    }
    if (!(value instanceof NumericAnswer.Value known)) {
      return special(value);
    }
    double number = known.number();
    return Optional.of(
        switch (settings.meaning()) {
          case TEMPERATURE_C -> Signal.linearised(number, coldJunctionC);
          case EMF_V -> Signal.emf(number * MV_PER_V, coldJunctionC.orElseThrow());
          case EMF_MV -> Signal.emf(number, coldJunctionC.orElseThrow());
        });
  }

  private static NumericAnswer number(Dialogue dialogue, String query) throws IOException {
    return dialogue.ask(query).map(NumericAnswer::of).orElse(new NumericAnswer.Unreadable());
  }

  private Optional<Signal> special(NumericAnswer answer) {
    if (answer instanceof NumericAnswer.Unreadable) {
      return Optional.empty();
    }
    Fault overload = settings.overloadIsOpenCircuit() ? Fault.OPEN_CIRCUIT : Fault.OUT_OF_RANGE;
    Fault fault = answer instanceof NumericAnswer.NotANumber ? Fault.NO_VALUE : overload;
    return Optional.of(new Signal.Faulty(fault));
  }
}
