package org.climbwatch.source.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A serial amplifier over a real pseudo-terminal, with what happens to it in a pottery. */
class SerialSourceIT {
  static final Duration LEAST_SILENCE = Duration.ofSeconds(1);

  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final Duration OFTEN = Duration.ofMillis(50);

  @TempDir Path folder;
  private Path name;
  private AmplifierEmulator emulator;
  private SerialSource source;
  private final List<Reading> readings = new ArrayList<>();

  @BeforeEach
  void plugIn() {
    name = folder.resolve("usb-amplifier");
    emulator = AmplifierEmulator.start(name);
  }

  @AfterEach
  void close() {
    if (source != null) {
      source.close();
    }
    emulator.close();
  }

  @Test
  void aClimbArrivesAsItWasSent() {
    open(SerialSettings.DEFAULT_SILENCE);
    emulator.sends(seconds -> 41_000 + 10 * seconds, 24.31, OFTEN);

    await(() -> goodCount() >= 20, "twenty readings");

    List<Double> emfs = readings.stream().map(reading -> ((Reading.Emf) reading).emfMv()).toList();
    assertThat(emfs).isSorted().allMatch(emfMv -> emfMv >= 41 && emfMv < 41.5);
    assertThat(readings).allMatch(reading -> ((Reading.Emf) reading).coldJunctionC() == 24.31);
    assertThat(source.describe()).contains("reading", " good").doesNotContain("declined");
  }

  @Test
  void aLineCutByTheOpeningIsDroppedInSilence() {
    emulator.send("234.5 cj_c=24.31 *25:40\r\n" + AmplifierEmulator.line(1000, 20));
    open(SerialSettings.DEFAULT_SILENCE);

    await(() -> goodCount() == 1, "the whole line");

    assertThat(faults()).isEmpty();
    assertThat(source.describe()).contains("1 good").doesNotContain("declined");
  }

  @Test
  void garbageAmongGoodLinesIsCountedAndCostsNothingElse() {
    open(SerialSettings.DEFAULT_SILENCE);
    emulator.sends(seconds -> 41_000, 24.31, OFTEN);
    await(() -> goodCount() >= 3, "readings");

    emulator.send("\n\0\0\u00FF\u00FE\n");
    emulator.send("emf_uv=99999.9 cj_c=24.31 *25:00\n");
    emulator.send("emf_uv=9");
    emulator.send("x".repeat(3000) + "\n");
    int before = goodCount();
    await(() -> goodCount() >= before + 20, "readings after the garbage");

    assertThat(faults()).isEmpty();
    assertThat(readings).allMatch(reading -> ((Reading.Emf) reading).emfMv() == 41);
    assertThat(source.describe()).contains("not_ascii 1", "checksum 1", "too_long 1");
  }

  /** A receiver at another speed sees bytes that have little to do with those sent. */
  @Test
  void aWrongSpeedIsGarbledLongBeforeTheSilenceIsOverAndHealsByItself() {
    open(Duration.ofMinutes(10));
    Random noise = new Random(573);
    emulator.sendsLines(seconds -> noiseLine(noise), OFTEN);

    await(() -> faults().contains(Fault.GARBLED), "garbled");
    assertThat(goodCount()).isZero();
    assertThat(source.describe()).contains("what arrives cannot be read", "declined");

    emulator.sends(seconds -> 41_000, 24.31, OFTEN);
    await(() -> goodCount() > 0, "a reading");
    assertThat(readings).allMatch(reading -> !isGood(reading) || emfMv(reading) == 41);
  }

  @Test
  void bytesWithoutAnyLineEndAreGarbled() {
    open(LEAST_SILENCE);
    emulator.sendsLines(seconds -> "UUUUUUUUUU", OFTEN);

    await(() -> faults().contains(Fault.GARBLED), "garbled");

    assertThat(faults()).containsOnly(Fault.GARBLED);
  }

  /** One line in three seconds, looked at twenty times a second. */
  @Test
  void aSlowDeviceIsNoFaultWithinItsSilence() {
    open(Duration.ofSeconds(5));
    emulator.sends(seconds -> 41_000 + seconds, 24.31, Duration.ofSeconds(3));

    await(() -> goodCount() >= 3, "three lines");

    assertThat(faults()).isEmpty();
    assertThat(readings).hasSize(3);
  }

  @Test
  void aDeviceSlowerThanTheSilenceAllowedIsNoAnswerInBetweenAndThenHeardAgain() {
    open(LEAST_SILENCE);
    emulator.sends(seconds -> 41_000, 24.31, Duration.ofSeconds(3));

    await(() -> goodCount() >= 2, "two lines");

    assertThat(faults()).containsOnly(Fault.NO_ANSWER);
  }

  @Test
  void aPortThatIsOpenButSilentFromTheStartIsNoAnswerAfterItsGrace() {
    open(LEAST_SILENCE);
    await(() -> source.describe().contains("waiting for a first line"), "the opening");
    assertThat(source.read(new Moment(0, 0))).isEmpty();

    await(() -> !faults().isEmpty(), "a fault");

    assertThat(faults()).containsOnly(Fault.NO_ANSWER);
  }

  @Test
  void aReplugUnderAnotherNumberIsFoundUnderTheSameName() {
    open(SerialSettings.DEFAULT_SILENCE);
    emulator.sends(seconds -> 41_000, 24.31, OFTEN);
    await(() -> goodCount() > 0, "a reading");
    Path first = emulator.device();

    emulator.unplug();
    await(() -> faults().contains(Fault.DEVICE_GONE), "gone");
    assertThat(source.describe()).contains("the device is gone");
    emulator.replug();
    int before = goodCount();
    await(() -> goodCount() > before, "a reading after the replug");

    assertThat(emulator.device()).isNotEqualTo(first);
    assertThat(faults()).containsOnly(Fault.DEVICE_GONE);
  }

  /** The name leads elsewhere although the old device still stands: the name decides. */
  @Test
  void aNameThatLeadsToAnotherDeviceIsFollowed() throws IOException {
    open(SerialSettings.DEFAULT_SILENCE);
    await(() -> source.describe().contains("waiting"), "the opening");
    Path other = folder.resolve("other");

    try (AmplifierEmulator second = AmplifierEmulator.start(other)) {
      second.sends(seconds -> 7_000, 24.31, OFTEN);
      Files.delete(name);
      Files.createSymbolicLink(name, second.device());

      await(() -> goodCount() > 0, "a reading of the second device");
    }
  }

  @Test
  void aPortMissingFromTheStartIsGoneAtOnceAndUsedWhenItComes() {
    emulator.unplug();
    open(SerialSettings.DEFAULT_SILENCE);
    await(() -> faults().contains(Fault.DEVICE_GONE), "gone");
    assertThat(source.describe()).contains(name + " is not there");

    emulator.replug();
    emulator.sends(seconds -> 41_000, 24.31, OFTEN);

    await(() -> goodCount() > 0, "a reading");
  }

  /** The library would try /dev/null for a missing file of that name elsewhere. */
  @Test
  void aMissingPathIsNotMistakenForADeviceOfTheSameLastName() {
    Path missing = folder.resolve("null");
    source = new SerialSource("top", SerialSettings.of(missing.toString()));

    await(() -> faults().contains(Fault.DEVICE_GONE), "gone");

    assertThat(source.describe()).contains(missing + " is not there");
  }

  @Test
  void aFileThatIsNoSerialPortIsToldAsSuch() throws IOException {
    Path file = Files.createFile(folder.resolve("file"));
    source = new SerialSource("top", SerialSettings.of(file.toString()));

    await(() -> faults().contains(Fault.DEVICE_GONE), "gone");

    assertThat(source.describe()).contains("is not a serial port");
  }

  @Test
  void aPortThatAnotherProbeReadsIsRefusedWithWhatToDo() {
    open(SerialSettings.DEFAULT_SILENCE);
    emulator.send(AmplifierEmulator.line(1000, 20));
    await(() -> goodCount() == 1, "the opening and a line");
    try (SerialSource second = new SerialSource("top", SerialSettings.of(name.toString()))) {
      await(() -> second.read(new Moment(0, 0)).isPresent(), "refusal");

      assertThat(second.describe()).contains("stop").contains("another program");
    }
  }

  @Test
  void aPortThatAnotherProgramHoldsIsToldAsInUseAndUsedOnceItIsFree() throws IOException {
    Process other =
        new ProcessBuilder("flock", emulator.device().toString(), "sh", "-c", "echo; sleep 60")
            .start();
    assertThat(other.getInputStream().read()).isEqualTo('\n');
    open(SerialSettings.DEFAULT_SILENCE);
    await(() -> faults().contains(Fault.DEVICE_GONE), "refusal");
    assertThat(source.describe()).contains("is in use by another program");

    other.descendants().forEach(ProcessHandle::destroy);
    other.destroy();
    emulator.sends(seconds -> 41_000, 24.31, OFTEN);

    await(() -> goodCount() > 0, "a reading");
  }

  @Test
  void boardsAreOpenedAlsoWithTheControlLinesLowered() {
    source =
        new SerialSource("top", new SerialSettings(name.toString(), 115_200, LEAST_SILENCE, false));
    emulator.sends(seconds -> 41_000, 24.31, OFTEN);

    await(() -> goodCount() > 0, "a reading");
  }

  /** One line of five is wild or reports an open circuit: a spark that met it. */
  @Test
  void ofTwentyLinesASecondTheMiddleIsReadAndSparksAreNot() {
    open(SerialSettings.DEFAULT_SILENCE);
    AtomicInteger sent = new AtomicInteger();
    emulator.sendsLines(seconds -> sparking(sent.getAndIncrement()), OFTEN);
    await(() -> goodCount() > 0, "a first reading");
    readings.clear();

    for (int reading = 0; reading < 3; reading++) {
      int before = sent.get();
      while (sent.get() < before + 20) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
      }
      source.read(new Moment(0, reading)).ifPresent(readings::add);
    }

    assertThat(readings).hasSize(3).allMatch(SerialSourceIT::isGood);
    assertThat(readings)
        .allSatisfy(
            reading -> {
              Reading.Emf emf = (Reading.Emf) reading;
              assertThat(emf.emfMv()).isBetween(41.0, 41.003);
              assertThat(emf.samples()).isBetween(10, 40);
              assertThat(emf.spreadMv()).isLessThan(0.01);
            });
  }

  private static String sparking(int line) {
    return switch (line % 10) {
      case 3 -> AmplifierEmulator.line("fault=open");
      case 8 -> AmplifierEmulator.line(77_000, 24.31);
      default -> AmplifierEmulator.line(41_000 + line % 4, 24.31);
    };
  }

  @Test
  void closingEndsItsThreadAndFreesThePort() {
    open(SerialSettings.DEFAULT_SILENCE);
    emulator.sends(seconds -> 41_000, 24.31, OFTEN);
    await(() -> goodCount() > 0, "a reading");

    long start = System.nanoTime();
    source.close();

    assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(1));
    assertThat(Thread.getAllStackTraces().keySet())
        .noneMatch(thread -> thread.getName().equals("serial-top"));
    readings.clear();
    open(SerialSettings.DEFAULT_SILENCE);
    await(() -> goodCount() > 0, "a reading of the port opened again");
  }

  private void open(Duration silence) {
    source = new SerialSource("top", new SerialSettings(name.toString(), 9600, silence, true));
  }

  private static String noiseLine(Random noise) {
    byte[] bytes = new byte[30];
    noise.nextBytes(bytes);
    bytes[29] = '\n';
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  /** Looks as the sampler does, only more often, until something is seen. */
  private void await(BooleanSupplier seen, String what) {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!seen.getAsBoolean()) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError(
            "waited for " + what + "; readings " + readings + "; " + source.describe());
      }
      Optional<Reading> reading = source.read(new Moment(0, readings.size()));
      reading.ifPresent(readings::add);
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
    }
  }

  private int goodCount() {
    return (int) readings.stream().filter(SerialSourceIT::isGood).count();
  }

  private List<Fault> faults() {
    return readings.stream()
        .filter(Reading.Faulty.class::isInstance)
        .map(reading -> ((Reading.Faulty) reading).fault())
        .toList();
  }

  private static boolean isGood(Reading reading) {
    return !(reading instanceof Reading.Faulty);
  }

  private static double emfMv(Reading reading) {
    return ((Reading.Emf) reading).emfMv();
  }
}
