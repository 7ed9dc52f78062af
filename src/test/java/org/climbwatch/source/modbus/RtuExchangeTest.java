package org.climbwatch.source.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.climbwatch.source.modbus.RtuExchange.Nothing;
import org.climbwatch.source.modbus.RtuExchange.Refused;
import org.climbwatch.source.modbus.RtuExchange.Registers;
import org.climbwatch.source.modbus.RtuExchange.Reply;
import org.climbwatch.source.port.ScriptedWire;
import org.junit.jupiter.api.Test;

/** One question and what may come back, with a timeout of one second. */
class RtuExchangeTest {
  private static final int UNIT = 5;
  private static final long TIMEOUT_NANOS = 1_000_000_000L;

  private final List<String> oddities = new ArrayList<>();

  /** MODBUS Application Protocol V1.1b3, sections 6.3 and 6.4: the examples' requests. */
  @Test
  void theQuestionsAreThoseOfTheStandardsExamples() throws IOException {
    ScriptedWire wire = new ScriptedWire((bytes, line) -> {});

    new RtuExchange(wire, 0x11, 3, TIMEOUT_NANOS, oddities::add).ask(0x6B, 3, false);
    new RtuExchange(wire, 0x11, 4, TIMEOUT_NANOS, oddities::add).ask(0x08, 1, false);

    assertThat(wire.sent().get(0)).isEqualTo(RtuFrames.checked(0x11, 3, 0, 0x6B, 0, 3));
    assertThat(wire.sent().get(1)).isEqualTo(RtuFrames.checked(0x11, 4, 0, 0x08, 0, 1));
  }

  @Test
  void anAnswerIsTakenAsSoonAsItIsThere() throws IOException {
    ScriptedWire wire = answering(300, RtuFrames.answer(UNIT, 4, 1234));
    long began = wire.nanoTime();

    assertThat(registers(ask(wire, false))).isEqualTo(1234);
    assertThat(wire.nanoTime() - began).isLessThan(500_000_000L);
    assertThat(oddities).isEmpty();
  }

  @Test
  void aRefusalCarriesItsCode() throws IOException {
    Reply reply = ask(answering(10, RtuFrames.exception(UNIT, 4, 2)), false);

    assertThat(reply).isEqualTo(new Refused(2));
  }

  @Test
  void silenceEndsAtTheTimeout() throws IOException {
    ScriptedWire wire = new ScriptedWire((bytes, line) -> {});

    assertThat(ask(wire, false)).isEqualTo(new Nothing("timeout", false));
    assertThat(wire.nanoTime()).isBetween(TIMEOUT_NANOS, TIMEOUT_NANOS + 300_000_000L);
  }

  @Test
  void aWrongCheckIsHeardButNoAnswer() throws IOException {
    byte[] broken = RtuFrames.answer(UNIT, 4, 1234);
    broken[broken.length - 1] ^= 1;

    assertThat(ask(answering(10, broken), false)).isEqualTo(new Nothing("unreadable", true));
  }

  /** MODBUS over Serial Line V1.02, section 2.4.1: the time-out goes on for the right unit. */
  @Test
  void theAnswerOfAnotherUnitIsPassedOverAndTheRightOneTaken() throws IOException {
    ScriptedWire wire =
        new ScriptedWire(
            (bytes, line) -> {
              line.arrives(50, RtuFrames.answer(UNIT + 1, 4, 999));
              line.arrives(400, RtuFrames.answer(UNIT, 4, 1234));
            });

    assertThat(registers(ask(wire, false))).isEqualTo(1234);
    assertThat(oddities).containsExactly("wrong_unit");
  }

  @Test
  void anAnswerOfAnotherLengthBelongsToAnotherQuestion() throws IOException {
    Reply reply = ask(answering(10, RtuFrames.answer(UNIT, 4, 1, 2)), false);

    assertThat(reply).isInstanceOf(Nothing.class);
    assertThat(oddities).containsExactly("wrong_length");
  }

  @Test
  void whatArrivedBeforeTheQuestionIsThrownAway() throws IOException {
    ScriptedWire wire = answering(200, RtuFrames.answer(UNIT, 4, 1234));
    wire.arrives(0, RtuFrames.answer(UNIT, 4, 999));

    assertThat(registers(ask(wire, false))).isEqualTo(1234);
    assertThat(oddities).containsExactly("unasked");
  }

  @Test
  void aLineThatNeverFallsSilentIsNotAsked() throws IOException {
    ScriptedWire wire = new ScriptedWire((bytes, line) -> {});
    for (int millis = 0; millis < 5000; millis += 20) {
      wire.arrives(millis, new byte[] {0x55});
    }

    assertThat(ask(wire, false)).isEqualTo(new Nothing("babble", true));
    assertThat(wire.sent()).isEmpty();
  }

  /** The first question's answer comes 1.5 s late, after the second question was sent. */
  @Test
  void aLateAnswerIsNotTakenForTheNextQuestions() throws IOException {
    List<Integer> values = new ArrayList<>(List.of(111, 222, 333));
    ScriptedWire wire =
        new ScriptedWire(
            (bytes, line) -> line.arrives(1500, RtuFrames.answer(UNIT, 4, values.remove(0))));

    assertThat(ask(wire, false)).isEqualTo(new Nothing("timeout", false));
    Reply second = ask(wire, true);

    assertThat(second).isEqualTo(new Nothing("late", true));
  }

  @Test
  void inDoubtAnAnswerIsBelievedOnceNoSecondFollows() throws IOException {
    ScriptedWire wire = answering(100, RtuFrames.answer(UNIT, 4, 1234));
    long began = wire.nanoTime();

    assertThat(registers(ask(wire, true))).isEqualTo(1234);
    assertThat(wire.nanoTime() - began).isGreaterThanOrEqualTo(3 * TIMEOUT_NANOS);
  }

  @Test
  void inDoubtSilenceStillEndsAtTheTimeout() throws IOException {
    ScriptedWire wire = new ScriptedWire((bytes, line) -> {});

    assertThat(ask(wire, true)).isEqualTo(new Nothing("timeout", false));
    assertThat(wire.nanoTime()).isLessThan(TIMEOUT_NANOS + 300_000_000L);
  }

  private Reply ask(ScriptedWire wire, boolean inDoubt) throws IOException {
    return new RtuExchange(wire, UNIT, 4, TIMEOUT_NANOS, oddities::add).ask(0, 1, inDoubt);
  }

  private static ScriptedWire answering(long afterMillis, byte[] answer) {
    return new ScriptedWire((bytes, line) -> line.arrives(afterMillis, answer));
  }

  private static double registers(Reply reply) {
    byte[] bytes = ((Registers) reply).bytes();
    return RegisterFormat.UINT16.value(bytes, WordOrder.HIGH_FIRST);
  }
}
