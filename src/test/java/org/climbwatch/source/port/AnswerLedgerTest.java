package org.climbwatch.source.port;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;
import org.junit.jupiter.api.Test;

/** With ten seconds of silence allowed, wanted from second 0 on. */
class AnswerLedgerTest {
  private static final Signal GOOD = new Signal.Linearised(900, OptionalDouble.empty());

  private final AnswerLedger ledger = new AnswerLedger(s(10), 0);

  @Test
  void anAnswerIsGivenOnce() {
    ledger.opened(0);
    ledger.answered(GOOD, "", s(1));

    assertThat(ledger.take(s(2))).contains(GOOD);
    assertThat(ledger.take(s(2))).isEmpty();
  }

  @Test
  void anAnswerOlderThanTheSilenceIsNeverGiven() {
    ledger.opened(0);
    ledger.answered(GOOD, "", s(1));

    assertThat(ledger.take(s(11))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void aSilentDeviceIsNoFaultWithinItsSilenceAndOneAfterwards() {
    ledger.opened(0);
    ledger.failed("timeout", false);

    assertThat(ledger.take(s(9.9))).isEmpty();
    assertThat(ledger.take(s(10))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void unreadableAnswersForAWhileAreGarbledBeforeTheSilenceIsOver() {
    ledger.opened(0);
    for (int i = 0; i < AnswerLedger.BAD_IN_A_ROW; i++) {
      ledger.failed("unreadable", true);
    }

    assertThat(ledger.take(s(1.9))).isEmpty();
    assertThat(ledger.take(s(2))).isEqualTo(fault(Fault.GARBLED));
  }

  @Test
  void aLostPortIsGoneAtOnceAndItsLastAnswerIsDropped() {
    ledger.opened(0);
    ledger.answered(GOOD, "", s(1));
    ledger.gone("/dev/x was lost");

    assertThat(ledger.take(s(1))).isEqualTo(fault(Fault.DEVICE_GONE));
    assertThat(ledger.describe(s(1))).contains("the device is gone (/dev/x was lost)");
  }

  @Test
  void aPortThatIsBackIsGivenItsSilenceAnew() {
    ledger.gone("/dev/x was lost");
    ledger.opened(s(30));

    assertThat(ledger.take(s(39))).isEmpty();
    assertThat(ledger.describe(s(39))).contains("waiting").doesNotContain("lost");
  }

  @Test
  void whatWentWrongIsCountedAndTold() {
    ledger.opened(0);
    ledger.failed("timeout", false);
    ledger.failed("timeout", false);
    ledger.oddity("wrong_unit");
    ledger.answered(new Signal.Faulty(Fault.NO_VALUE), "exception 02", s(1));

    assertThat(ledger.describe(s(1)))
        .isEqualTo("answering (exception 02); answers: 1 good, timeout 2, wrong_unit 1");
  }

  private static Optional<Signal> fault(Fault fault) {
    return Optional.of(new Signal.Faulty(fault));
  }

  private static long s(double seconds) {
    return (long) (seconds * 1e9);
  }
}
