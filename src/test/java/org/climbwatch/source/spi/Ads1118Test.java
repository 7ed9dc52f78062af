package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.spi.Ads1118.Inputs;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Patterns and figures from the ADS1118 data sheet, SBAS457F, unless a line says else. */
class Ads1118Test {
  private static final Moment AT = new Moment(0, 1);
  private static final int COLD_25_C = 0x0320 << 2;

  /** Words that read back, from the fields of the configuration register: start bit as 0. */
  private static final int COUPLE = 0x0B0B;

  private static final int SENSOR = 0x0B1B;

  private final Ads1118 chip = new Ads1118(ThermocoupleType.K, Inputs.AIN0_AIN1, 256, 8);
  private final Chip.Talk talk = chip.talk("top");

  /** Table 4, 14-bit temperature data format; left-justified in the result. */
  @ParameterizedTest(name = "{0} °C")
  @CsvSource({
    "127.96875, 0FFF",
    "100, 0C80",
    "75, 0960",
    "50, 0640",
    "25, 0320",
    "0.25, 0008",
    "0.03125, 0001",
    "0, 0000",
    "-0.25, 3FF8",
    "-25, 3CE0",
    "-40, 3B00"
  })
  void sensorBitsMeanWhatTheDataSheetSays(double celsius, String fourteenBits) {
    assertThat(Ads1118.sensorC((short) (Integer.parseInt(fourteenBits, 16) << 2)))
        .isEqualTo(celsius);
  }

  @ParameterizedTest(name = "{2}")
  @CsvSource({
    "AIN0_AIN1, 256, 8, 8B0B",
    "AIN2_AIN3, 256, 8, BB0B",
    "AIN0_AIN1, 512, 16, 892B",
    "AIN0_AIN1, 1024, 32, 874B",
    "AIN0_AIN1, 2048, 128, 858B",
    "AIN0_AIN1, 4096, 64, 836B",
    "AIN0_AIN1, 6144, 860, 81EB",
    "AIN0_AIN1, 256, 250, 8BAB",
    "AIN0_AIN1, 256, 475, 8BCB"
  })
  void settingsGoIntoTheWordOfTheDataSheet(Inputs inputs, int mv, int rate, String word) {
    Ads1118 each = new Ads1118(ThermocoupleType.K, inputs, mv, rate);

    assertThat(each.configuration(false)).isEqualTo(Integer.parseInt(word, 16));
    assertThat(each.configuration(true)).isEqualTo(Integer.parseInt(word, 16) | 0x10);
  }

  /** Table of full-scale ranges: µV to a step. */
  @ParameterizedTest
  @CsvSource({
    "6144, 187.5",
    "4096, 125",
    "2048, 62.5",
    "1024, 31.25",
    "512, 15.625",
    "256, 7.8125"
  })
  void aStepIsWhatTheDataSheetSays(int rangeMv, double stepUv) {
    assertThat(new Ads1118(ThermocoupleType.K, Inputs.AIN0_AIN1, rangeMv, 8).stepMv() * 1000)
        .isEqualTo(stepUv);
  }

  @Test
  void theSensorIsAskedOnceAndTheCoupleThreeTimesInARound() {
    assertThat(talk.setUp().get(0)).containsExactly(0x8B, 0x1B, 0, 0);
    for (int round = 0; round < 3; round++) {
      assertThat(take(COLD_25_C, COUPLE)).isEmpty();
      assertThat(emfMv(take(6000, COUPLE))).isEqualTo(46.875);
      assertThat(emfMv(take(6001, COUPLE))).isCloseTo(46.8828, within(0.00005 + 1e-9));
      assertThat(talk.look().get(0)).containsExactly(0x8B, 0x1B, 0, 0);
      assertThat(emfMv(take(-6000, SENSOR))).isEqualTo(-46.875);
      assertThat(talk.look().get(0)).containsExactly(0x8B, 0x0B, 0, 0);
    }
  }

  @Test
  void theSensorOfTheSameRoundIsTheColdJunction() {
    talk.setUp();
    take(0x0640 << 2, COUPLE);

    assertThat(((Reading.Emf) take(100, COUPLE).orElseThrow()).coldJunctionC()).isEqualTo(50);
  }

  @Test
  void theEndsOfTheScaleAreFaults() {
    talk.setUp();
    take(COLD_25_C, COUPLE);

    assertThat(fault(take(0x7FFF, COUPLE))).isEqualTo(Fault.OPEN_CIRCUIT);
    assertThat(fault(take(-0x8000, COUPLE))).isEqualTo(Fault.OUT_OF_RANGE);
    assertThat(emfMv(take(0x7FFE, SENSOR))).isCloseTo(255.98, within(0.01));
  }

  /** Every bit of the read-back, one after the other, and a bridge from MOSI to MISO. */
  @Test
  void aConfigurationThatDoesNotReadBackIsAWiringFaultAndIsWrittenAgain() {
    for (int bit = 0; bit < 16; bit++) {
      talk.setUp();
      take(COLD_25_C, COUPLE);
      Chip.Answer answer = talk.take(frame(6000, COUPLE ^ 1 << bit), AT);

      assertThat(fault(answer.reading())).isEqualTo(Fault.WIRING);
      assertThat(answer.settingsLost()).isPresent();
    }
    talk.setUp();
    assertThat(fault(talk.take(talk.look().get(0), AT).reading())).isEqualTo(Fault.WIRING);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -1})
  void allZerosAndAllOnesAreAWiringFault(int word) {
    talk.setUp();

    assertThat(fault(take(word, word))).isEqualTo(Fault.WIRING);
  }

  /** The register after power came on: the chip has forgotten what it was told. */
  @Test
  void theValueAfterPowerOnIsNoReadBack() {
    talk.setUp();

    assertThat(fault(take(0, 0x058B))).isEqualTo(Fault.WIRING);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"3AFF", "0FA1", "2000", "1FFF"})
  void aChipHotterOrColderThanSiliconWorksIsAWiringFaultUntilItsNextTurn(String fourteenBits) {
    talk.setUp();
    int result = (short) (Integer.parseInt(fourteenBits, 16) << 2);

    assertThat(fault(take(result, COUPLE))).isEqualTo(Fault.WIRING);
    assertThat(fault(take(6000, COUPLE))).isEqualTo(Fault.WIRING);
    take(6000, COUPLE);
    take(6000, SENSOR);
    assertThat(take(COLD_25_C, COUPLE)).isEmpty();
    assertThat(take(6000, COUPLE).orElseThrow()).isInstanceOf(Reading.Emf.class);
  }

  @Property
  void everyResultBetweenTheEndsIsItsShareOfTheRange(
      @ForAll @IntRange(min = -0x7FFF, max = 0x7FFE) int result) {
    Chip.Talk each = chip.talk("top");
    each.setUp();
    each.take(frame(COLD_25_C, COUPLE), AT);

    double emfMv = emfMv(each.take(frame(result, COUPLE), AT).reading());

    assertThat(emfMv).isCloseTo(result * 256.0 / 32768, within(0.00005 + 1e-9));
  }

  /** 1 / 8 SPS within 10 %. */
  @Test
  void aConversionTakesOneOverTheRate() {
    assertThat(chip.conversion()).isEqualTo(Duration.ofMillis(140));
    assertThat(chip.rest()).isEqualTo(chip.conversion());
    assertThat(chip.settling()).isEqualTo(chip.conversion());
  }

  /**
   * SBAS457F, electrical characteristics: offset ±2 steps, linearity 1 step; gain 0.15 % and, from
   * memory, 0.1 % between ranges; full scale over 2^15 to a step; sensor ±1 °C.
   */
  @Test
  void itsErrorsAreThoseOfTheDataSheet() {
    assertThat(chip.errors()).isEqualTo(new ProbeErrors(0, 23.4375, 2500, 1, 0, 7.8125, 0));
    assertThat(new Ads1118(ThermocoupleType.J, Inputs.AIN0_AIN1, 512, 8).errors())
        .isEqualTo(new ProbeErrors(0, 46.875, 2500, 1, 0, 15.625, 0));
  }

  @Test
  void whatTheChipCannotDoIsRefused() {
    assertThatThrownBy(() -> new Ads1118(ThermocoupleType.K, Inputs.AIN0_AIN1, 100, 8))
        .hasMessageContaining("rangeMv must be one of [256, 512");
    assertThatThrownBy(() -> new Ads1118(ThermocoupleType.K, Inputs.AIN0_AIN1, 256, 10))
        .hasMessageContaining("samplesPerSecond must be one of [8, 16");
  }

  private Optional<Reading> take(int result, int readBack) {
    return talk.take(frame(result, readBack), AT).reading();
  }

  private static byte[] frame(int result, int readBack) {
    return new byte[] {
      (byte) (result >> 8), (byte) result, (byte) (readBack >> 8), (byte) readBack
    };
  }

  private static double emfMv(Optional<Reading> reading) {
    return ((Reading.Emf) reading.orElseThrow()).emfMv();
  }

  private static Fault fault(Optional<Reading> reading) {
    return ((Reading.Faulty) reading.orElseThrow()).fault();
  }
}
