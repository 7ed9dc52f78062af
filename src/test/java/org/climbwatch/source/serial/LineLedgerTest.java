package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Signal;
import org.junit.jupiter.api.Test;

class LineLedgerTest {
  private static final Signal SIGNAL = new Signal.Emf(40, 25);

  private final LineLedger ledger = new LineLedger(s(10), 3, s(0));

  @Test
  void beforeThePortWasTriedNothingIsSaid() {
    assertThat(ledger.take(s(1))).isEmpty();
  }

  @Test
  void aPortThatCannotBeTriedAtAllBecomesAFaultInTheEnd() {
    assertThat(ledger.take(s(10))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void aMissingPortIsGoneAtOnceAndStaysSo() {
    ledger.gone("/dev/x is not there");

    assertThat(ledger.take(s(0))).isEqualTo(fault(Fault.DEVICE_GONE));
    assertThat(ledger.take(s(100))).isEqualTo(fault(Fault.DEVICE_GONE));
    assertThat(ledger.describe(s(100))).contains("the device is gone", "/dev/x is not there");
  }

  @Test
  void everySignalIsGivenOnceAndInOrder() {
    ledger.opened(s(0));
    ledger.accepted(new Signal.Emf(1, 25), s(1));
    ledger.accepted(SIGNAL, s(2));

    assertThat(ledger.take(s(2))).containsExactly(new Signal.Emf(1, 25), SIGNAL);
    assertThat(ledger.take(s(3))).isEmpty();
  }

  @Test
  void whileNobodyAsksTheNewestSignalsAreKept() {
    ledger.opened(s(0));
    for (int emfMv = 1; emfMv <= 5; emfMv++) {
      ledger.accepted(new Signal.Emf(emfMv, 25), s(emfMv));
    }

    assertThat(ledger.take(s(5)))
        .containsExactly(new Signal.Emf(3, 25), new Signal.Emf(4, 25), new Signal.Emf(5, 25));
  }

  @Test
  void anOpenPortHasItsSilenceFromTheOpeningOn() {
    ledger.gone("away");
    ledger.opened(s(100));

    assertThat(ledger.take(s(109.9))).isEmpty();
    assertThat(ledger.take(s(110))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void silenceAfterAReadingIsNoAnswerOnlyWhenItsTimeIsUp() {
    ledger.opened(s(0));
    ledger.accepted(SIGNAL, s(5));
    ledger.take(s(5));

    assertThat(ledger.take(s(14.9))).isEmpty();
    assertThat(ledger.take(s(15))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void bytesWithoutAReadableLineAreGarbledWhenTheSilenceIsOver() {
    ledger.opened(s(0));
    for (int second = 1; second <= 10; second++) {
      ledger.bytes(10, s(second));
    }

    assertThat(ledger.take(s(9.9))).isEmpty();
    assertThat(ledger.take(s(10))).isEqualTo(fault(Fault.GARBLED));
    assertThat(ledger.take(s(20))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void theHeadOfALineThatHasJustBegunIsNotGarbled() {
    ledger.opened(s(0));
    ledger.bytes(20, s(10));

    assertThat(ledger.take(s(10))).isEqualTo(fault(Fault.NO_ANSWER));
  }

  @Test
  void aSingleBadLineIsCountedAndNothingMore() {
    ledger.opened(s(0));
    ledger.accepted(SIGNAL, s(1));
    ledger.take(s(1));
    bad(s(2));

    assertThat(ledger.take(s(3))).isEmpty();
    assertThat(ledger.describe(s(3))).contains("reading", "1 good", "checksum 1");
  }

  @Test
  void severalBadLinesInARowAreGarbledBeforeTheSilenceIsOver() {
    ledger.opened(s(0));
    ledger.accepted(SIGNAL, s(0));
    ledger.take(s(0));
    for (int line = 1; line < LineLedger.BAD_LINES_IN_A_ROW; line++) {
      bad(s(line));
    }
    assertThat(ledger.take(s(4.9))).isEmpty();

    bad(s(5));

    assertThat(ledger.take(s(5))).isEqualTo(fault(Fault.GARBLED));
  }

  @Test
  void aBurstOfNoiseIsNotYetGarbled() {
    ledger.opened(s(0));
    ledger.accepted(SIGNAL, s(0));
    ledger.take(s(0));
    for (int line = 0; line < 50; line++) {
      bad(s(0.5));
    }

    assertThat(ledger.take(s(1))).isEmpty();
    ledger.accepted(SIGNAL, s(1.5));
    assertThat(ledger.take(s(1.5))).contains(SIGNAL);
    assertThat(ledger.take(s(5))).isEmpty();
  }

  @Test
  void aReadingAmongBadLinesIsGiven() {
    ledger.opened(s(0));
    for (int line = 0; line < 9; line++) {
      bad(s(line));
    }
    ledger.accepted(SIGNAL, s(9));
    bad(s(9));

    assertThat(ledger.take(s(9))).contains(SIGNAL);
  }

  /** A value seen before the port was lost is older news than the loss. */
  @Test
  void aLostPortIsToldInPlaceOfTheLastReading() {
    ledger.opened(s(0));
    ledger.accepted(SIGNAL, s(1));
    ledger.gone("lost");

    assertThat(ledger.take(s(1))).isEqualTo(fault(Fault.DEVICE_GONE));
  }

  @Test
  void aFaultThatTheDeviceReportsIsASignalLikeAnyOther() {
    ledger.opened(s(0));
    ledger.accepted(new Signal.Faulty(Fault.OPEN_CIRCUIT), s(1));

    assertThat(ledger.take(s(1))).isEqualTo(fault(Fault.OPEN_CIRCUIT));
    assertThat(ledger.take(s(2))).isEmpty();
  }

  private void bad(long now) {
    ledger.bytes(20, now);
    ledger.declined(Decline.CHECKSUM);
  }

  private static List<Signal> fault(Fault fault) {
    return List.of(new Signal.Faulty(fault));
  }

  private static long s(double seconds) {
    return (long) (seconds * 1e9);
  }
}
