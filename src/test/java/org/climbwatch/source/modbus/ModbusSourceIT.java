package org.climbwatch.source.modbus;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.Source;
import org.climbwatch.source.modbus.ModbusSettings.ColdJunctionFrom;
import org.climbwatch.source.modbus.ModbusSettings.Meaning;
import org.climbwatch.source.modbus.ModbusSettings.Status;
import org.climbwatch.source.port.Looks;
import org.climbwatch.source.port.Parity;
import org.climbwatch.source.port.PortSettings;
import org.climbwatch.source.port.SharedPorts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Transmitters over a real pseudo-terminal, well and badly behaved. */
class ModbusSourceIT {
  static final int UNIT = 5;

  private static final Duration PAUSE = Duration.ofMillis(100);
  private static final Duration TIMEOUT = Duration.ofMillis(300);
  private static final Duration SILENCE = Duration.ofSeconds(2);

  @TempDir Path folder;
  private final SharedPorts ports = new SharedPorts();
  private TransmitterEmulator emulator;
  private Source source;
  private Looks looks;

  /** Emf in two registers, cold junction in tenths in a third, an open-circuit bit in a fifth. */
  static ModbusSettings emf(Path port) {
    return new ModbusSettings(
        line(port),
        UNIT,
        ModbusSettings.INPUT_REGISTERS,
        new Register(0, RegisterFormat.FLOAT32, WordOrder.HIGH_FIRST, 1),
        Meaning.EMF_MV,
        new ColdJunctionFrom(
            Optional.of(new Register(2, RegisterFormat.INT16, WordOrder.HIGH_FIRST, 0.1)),
            OptionalDouble.empty()),
        List.of(),
        Optional.of(new Status(4, 0x0004)),
        PAUSE,
        TIMEOUT,
        SILENCE);
  }

  private ModbusSettings tenths(int unit, int address) {
    return tenths(unit, address, SILENCE);
  }

  private ModbusSettings tenths(int unit, int address, Duration silence) {
    return new ModbusSettings(
        line(folder.resolve("rs485")),
        unit,
        ModbusSettings.HOLDING_REGISTERS,
        new Register(address, RegisterFormat.INT16, WordOrder.HIGH_FIRST, 0.1),
        Meaning.TEMPERATURE_C,
        ColdJunctionFrom.NOWHERE,
        List.of(32_767.0, -32_768.0),
        Optional.empty(),
        PAUSE,
        TIMEOUT,
        silence);
  }

  private static PortSettings line(Path port) {
    return new PortSettings(port.toString(), 9600, Parity.NONE, 1, true);
  }

  @BeforeEach
  void plugIn() {
    emulator = TransmitterEmulator.start(folder.resolve("rs485"));
    emulator.holds(UNIT, 0, 10_042);
    source = ModbusSource.open("upper", tenths(UNIT, 0), ports);
    looks = new Looks(source);
  }

  @AfterEach
  void close() {
    source.close();
    emulator.close();
  }

  @Test
  void aTemperatureInTenthsArrives() {
    looks.untilGood(5);

    assertThat(looks.temperatures()).containsOnly(1004.2);
    assertThat(looks.faults()).isEmpty();
    assertThat(source.describe()).contains("Modbus unit 5", "9600 baud 8N1", "answering");
  }

  @Test
  void aFaultValueIsABrokenCouple() {
    emulator.holds(UNIT, 0, 32_767);
    looks.untilFault(Fault.OPEN_CIRCUIT);

    assertThat(looks.good()).isEmpty();
  }

  @Test
  void everyExceptionIsAFaultWithItsText() {
    for (int code = 1; code <= 0x0B; code++) {
      int current = code;
      emulator.misbehaves(answer -> RtuFrames.exception(UNIT, 3, current));
      String shown = String.format("exception %02X", code);
      looks.until(() -> source.describe().contains(shown), shown);
    }
    looks.untilFault(Fault.NO_VALUE);

    assertThat(looks.good()).isEmpty();
  }

  @Test
  void aRegisterThatIsNotThereSaysWhatToDo() {
    source.close();
    source = ModbusSource.open("upper", tenths(UNIT, 400), ports);
    looks = new Looks(source);

    looks.untilFault(Fault.NO_VALUE);

    assertThat(source.describe()).contains("illegal data address", "count from 0");
  }

  @Test
  void wrongChecksAreGarbledAndNeverATemperature() {
    looks.untilGood(1);
    emulator.misbehaves(ModbusSourceIT::withWrongCheck);
    looks.untilFault(Fault.GARBLED);

    assertThat(source.describe()).contains("unreadable");
    emulator.behaves();
    looks.forget();
    looks.untilGood(3);
    assertThat(looks.temperatures()).containsOnly(1004.2);
  }

  @Test
  void shortFramesAreNoAnswer() {
    emulator.misbehaves(answer -> Arrays.copyOf(answer, answer.length - 2));
    looks.untilFault(Fault.GARBLED);

    assertThat(looks.good()).isEmpty();
  }

  @Test
  void noiseBeforeAnAnswerCostsNothing() {
    emulator.misbehaves(
        answer -> RtuFrames.joined(new byte[] {0, UNIT, 3, (byte) 0xFF, UNIT}, answer));
    looks.untilGood(5);

    assertThat(looks.temperatures()).containsOnly(1004.2);
    assertThat(looks.faults()).isEmpty();
  }

  @Test
  void anotherUnitsAnswerIsNeverTaken() {
    emulator.misbehaves(answer -> RtuFrames.answer(UNIT + 1, 3, 5000));
    looks.untilFault(Fault.GARBLED);

    assertThat(looks.good()).isEmpty();
    assertThat(source.describe()).contains("wrong_unit");
  }

  @Test
  void silenceIsNoAnswerAndHealsByItself() {
    looks.untilGood(1);
    emulator.fallsSilent();
    looks.untilFault(Fault.NO_ANSWER);
    emulator.behaves();

    looks.untilGood(1);
  }

  @Test
  void aPluggedOutLineIsGoneAndFoundAgain() {
    looks.untilGood(1);
    emulator.line().unplug();
    looks.untilFault(Fault.DEVICE_GONE);
    emulator.line().plugIn();

    looks.untilGood(3);
    assertThat(looks.temperatures()).containsOnly(1004.2);
  }

  /**
   * The transmitter answers 1.5 timeouts late, so that each answer comes after the next question,
   * and two probes ask it for two registers of the same length: taken blindly, one would get the
   * other's number.
   */
  @Test
  void lateAnswersAreNeverTakenForAnotherQuestions() {
    emulator.holds(UNIT, 7, 2000);
    try (Source other = ModbusSource.open("flue", tenths(UNIT, 7), ports)) {
      Looks others = new Looks(other);
      looks.untilGood(2);
      others.untilGood(2);
      emulator.answersAfter(TIMEOUT.toMillis() * 3 / 2);
      looks.until(() -> !looks.faults().isEmpty(), "a fault");
      others.until(() -> !others.faults().isEmpty(), "the other's fault");
      emulator.behaves();
      looks.untilGood(3);
      others.untilGood(3);

      assertThat(looks.temperatures()).containsOnly(1004.2);
      assertThat(others.temperatures()).containsOnly(200.0);
    }
  }

  @Test
  void twoUnitsShareALineAndADeadOneLeavesTheOtherAlone() {
    emulator.holds(9, 0, 3000);
    try (Source other = ModbusSource.open("flue", tenths(9, 0), ports)) {
      Looks others = new Looks(other);
      looks.untilGood(3);
      others.untilGood(3);
      emulator.misbehaves(answer -> answer[0] == 9 ? new byte[0] : answer);
      looks.forget();
      others.until(() -> others.faults().contains(Fault.NO_ANSWER), "no answer of unit 9");
      looks.untilGood(10);

      assertThat(looks.faults()).isEmpty();
      assertThat(looks.temperatures()).containsOnly(1004.2);
      assertThat(others.temperatures()).containsOnly(300.0);
    }
    looks.untilGood(3);
  }

  @Test
  void aLookNeverWaitsForTheLine() {
    emulator.fallsSilent();
    looks.untilFault(Fault.NO_ANSWER);

    assertThat(looks.longest()).isLessThan(TIMEOUT);
  }

  @Test
  void anOccasionalBrokenFrameCostsNoFault() {
    // a busy machine that leaves the line alone for two seconds is not what this is about
    source.close();
    source = ModbusSource.open("upper", tenths(UNIT, 0, Duration.ofSeconds(30)), ports);
    looks = new Looks(source);
    AtomicInteger count = new AtomicInteger();
    emulator.misbehaves(
        answer -> count.incrementAndGet() % 7 == 0 ? withWrongCheck(answer) : answer);
    looks.untilGood(30);

    assertThat(looks.faults()).isEmpty();
    assertThat(looks.temperatures()).containsOnly(1004.2);
  }

  @Test
  void numbersThatNoThermocoupleHasAreOutOfRange() {
    emulator.holds(UNIT, 0, 32_000);
    looks.untilFault(Fault.OUT_OF_RANGE);

    assertThat(looks.good()).isEmpty();
  }

  @Test
  void aFloatThatIsNoNumberIsNoReading() {
    source.close();
    emulator.holds(UNIT, 2, 250, 0, 0);
    emulator.holdsFloat(UNIT, 0, Double.NaN);
    source = ModbusSource.open("upper", emf(folder.resolve("rs485")), ports);
    looks = new Looks(source);
    looks.untilFault(Fault.NO_VALUE);
    emulator.holdsFloat(UNIT, 0, 41.25);
    looks.untilGood(1);

    Reading.Emf emf = (Reading.Emf) looks.good().get(0);
    assertThat(emf.emfMv()).isEqualTo(41.25);
    assertThat(emf.coldJunctionC()).isEqualTo(25.0);
  }

  private static byte[] withWrongCheck(byte[] answer) {
    byte[] broken = answer.clone();
    if (broken.length > 0) {
      broken[broken.length - 1] ^= 0x40;
    }
    return broken;
  }
}
