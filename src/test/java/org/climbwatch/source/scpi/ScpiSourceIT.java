package org.climbwatch.source.scpi;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.climbwatch.reading.Fault;
import org.climbwatch.source.Source;
import org.climbwatch.source.port.Looks;
import org.climbwatch.source.port.Parity;
import org.climbwatch.source.port.PortSettings;
import org.climbwatch.source.port.SharedPorts;
import org.climbwatch.source.scpi.ScpiSettings.ColdJunctionFrom;
import org.climbwatch.source.scpi.ScpiSettings.Meaning;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An instrument over a real pseudo-terminal, well and badly behaved. */
class ScpiSourceIT {
  private static final String QUERY = "MEAS:TEMP:TCOUPLE?";
  private static final String OTHER_QUERY = "MEAS:TEMP:TCOUPLE? (@102)";
  private static final Duration TIMEOUT = Duration.ofMillis(300);

  @TempDir Path folder;
  private final SharedPorts ports = new SharedPorts();
  private InstrumentEmulator emulator;
  private Source source;
  private Looks looks;

  private ScpiSettings asking(String query) {
    return new ScpiSettings(
        new PortSettings(folder.resolve("rs232").toString(), 9600, Parity.NONE, 1, true),
        List.of("SYST:REM", "UNIT:TEMP C"),
        query,
        Meaning.TEMPERATURE_C,
        ColdJunctionFrom.NOWHERE,
        false,
        Duration.ofMillis(100),
        TIMEOUT,
        Duration.ofSeconds(2));
  }

  @BeforeEach
  void plugIn() {
    emulator = InstrumentEmulator.start(folder.resolve("rs232"));
    emulator.answers(QUERY, "+1.00420000E+03");
    source = ScpiSource.open("upper", asking(QUERY), ports);
    looks = new Looks(source);
  }

  @AfterEach
  void close() {
    source.close();
    emulator.close();
  }

  @Test
  void aTemperatureArrivesAndTheInstrumentIsNamed() {
    looks.untilGood(3);

    assertThat(looks.temperatures()).containsOnly(1004.2);
    assertThat(source.describe()).contains("\"EXAMPLE,BENCH EMULATOR,0,1.0\"", "answering");
    assertThat(emulator.commands()).containsExactly("SYST:REM", "UNIT:TEMP C");
  }

  @Test
  void overloadOfEitherSignIsOutOfRange() {
    for (String overload : List.of("+9.9E+37", "-9.90000000E+37")) {
      emulator.answers(QUERY, overload);
      looks.untilFault(Fault.OUT_OF_RANGE);
      emulator.answers(QUERY, "20.5");
      looks.untilGood(1);
    }

    assertThat(looks.temperatures()).allMatch(temperatureC -> temperatureC == 20.5);
  }

  @Test
  void notANumberIsNoValue() {
    emulator.answers(QUERY, "+9.91000000E+37");
    looks.untilFault(Fault.NO_VALUE);

    assertThat(looks.good()).isEmpty();
    assertThat(source.describe()).contains("not-a-number");
  }

  @Test
  void whatStandsInTheErrorQueueIsShownAndTheQueueEmptied() {
    // the first source must not read the queue for the second
    source.close();
    emulator.raises("-221,\"Settings conflict\"");
    emulator.raises("-310,\"System error\"");
    source = ScpiSource.open("upper", asking(QUERY), ports);
    looks = new Looks(source);
    looks.untilGood(1);

    assertThat(source.describe())
        .contains("instrument errors: 2", "-221 \"Settings conflict\"", "-310 \"System error\"");
  }

  @Test
  void aQueryThatTheInstrumentDoesNotKnowIsNoAnswerWithItsError() {
    source.close();
    source = ScpiSource.open("upper", asking("MEAS:TEMQ?"), ports);
    looks = new Looks(source);
    looks.untilFault(Fault.NO_ANSWER);

    assertThat(source.describe()).contains("-113 \"Undefined header\"");
  }

  @Test
  void garbageIsNeverATemperature() {
    emulator.answers(QUERY, "\u00FF\u00FE1004.2");
    looks.untilFault(Fault.GARBLED);
    emulator.answers(QUERY, "1004.2");
    looks.forget();
    looks.untilGood(1);

    assertThat(looks.temperatures()).containsOnly(1004.2);
  }

  /** A line whose end is lost would otherwise join the next one: 100 and 1004.2 to 1001004.2. */
  @Test
  void aPartialLineIsNoTemperature() {
    emulator.answers(QUERY, "100~");
    looks.untilFault(Fault.GARBLED);

    assertThat(looks.good()).isEmpty();
    emulator.answers(QUERY, "1004.2");
    looks.untilGood(1);
    assertThat(looks.temperatures()).containsOnly(1004.2);
  }

  @Test
  void anEchoOfTheCommandIsPassedOver() {
    emulator.echoes(true);
    looks.untilGood(3);

    assertThat(looks.temperatures()).containsOnly(1004.2);
    assertThat(looks.faults()).isEmpty();
    assertThat(source.describe()).contains("echo");
  }

  @Test
  void severalNumbersInOneAnswerAreNotGuessedAt() {
    emulator.answers(QUERY, "1004.2,25.0");
    looks.untilFault(Fault.GARBLED);

    assertThat(looks.good()).isEmpty();
  }

  @Test
  void silenceIsNoAnswerAndHealsByItself() {
    looks.untilGood(1);
    emulator.fallsSilent(true);
    looks.untilFault(Fault.NO_ANSWER);
    emulator.fallsSilent(false);

    looks.untilGood(1);
    assertThat(looks.longest()).isLessThan(TIMEOUT);
  }

  @Test
  void aPluggedOutInstrumentIsGoneAndGreetedAnewWhenItIsBack() {
    looks.untilGood(1);
    emulator.line().unplug();
    looks.untilFault(Fault.DEVICE_GONE);
    emulator.line().plugIn();
    looks.untilGood(1);

    assertThat(emulator.commands())
        .containsExactly("SYST:REM", "UNIT:TEMP C", "SYST:REM", "UNIT:TEMP C");
  }

  /**
   * The instrument answers 1.5 timeouts late, so that each answer comes after the next question,
   * and two probes ask for two channels: taken blindly, one would get the other's number.
   */
  @Test
  void lateAnswersAreNeverTakenForAnotherQuestions() {
    emulator.answers(OTHER_QUERY, "200");
    try (Source other = ScpiSource.open("flue", asking(OTHER_QUERY), ports)) {
      Looks others = new Looks(other);
      looks.untilGood(2);
      others.untilGood(2);
      emulator.answersAfter(TIMEOUT.toMillis() * 3 / 2);
      looks.until(() -> !looks.faults().isEmpty(), "a fault");
      others.until(() -> !others.faults().isEmpty(), "the other's fault");
      emulator.answersAfter(0);
      looks.untilGood(3);
      others.untilGood(3);

      assertThat(looks.temperatures()).containsOnly(1004.2);
      assertThat(others.temperatures()).containsOnly(200.0);
    }
  }
}
