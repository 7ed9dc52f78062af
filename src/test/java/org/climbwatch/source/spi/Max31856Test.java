package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.spi.Max31856.Mode;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Patterns and figures from the MAX31856 data sheet, 19-7534 Rev 0, unless a line says else. */
class Max31856Test {
  private static final Moment AT = new Moment(0, 1);
  private static final int COLD_25_C = 0x1900;

  private final Max31856 chip = of(ThermocoupleType.K, Mode.TEMPERATURE);

  @ParameterizedTest(name = "{0} °C")
  @CsvSource({"25, 019000", "1600, 640000", "-0.0625, FFFF00", "-250, F06000", "0.0078125, 000020"})
  void hotJunctionBitsMeanWhatTheDataSheetSays(double celsius, String bytes) {
    int code = Integer.parseInt(bytes, 16);

    assertThat(frame(chip, COLD_25_C, code, 0).hotJunctionC()).isEqualTo(celsius);
    // the five bits below the nineteen stand for nothing
    assertThat(frame(chip, COLD_25_C, code | 0x1F, 0).hotJunctionC()).isEqualTo(celsius);
  }

  @ParameterizedTest(name = "{0} °C")
  @CsvSource({"25, 1900", "-0.5, FF80", "0.015625, 0004", "-55, C900", "125, 7D00"})
  void coldJunctionBitsMeanWhatTheDataSheetSays(double celsius, String bytes) {
    int code = Integer.parseInt(bytes, 16);

    assertThat(frame(chip, code, 0x640000, 0).coldJunctionC()).isEqualTo(celsius);
  }

  /** E(1000 °C) 41.276 mV and E(25 °C) 1.000 mV, NIST Monograph 175, Type K. */
  @Test
  void theTemperatureOfTheChipIsTurnedBackIntoTheCouplesEmf() {
    Reading.Emf reading = (Reading.Emf) reading(chip, COLD_25_C, 1000 * 128 << 5, 0);

    assertThat(reading.emfMv()).isCloseTo(41.276 - 1.000, within(0.001));
    assertThat(reading.coldJunctionC()).isEqualTo(25.0);
    assertThat(reading.at()).isEqualTo(AT);
    assertThat(reading.probe()).isEqualTo("top");
  }

  @Property
  void theWayBackRestoresTheTemperatureOfTheChip(
      @ForAll @IntRange(min = -199 * 128, max = 1371 * 128) int code,
      @ForAll @IntRange(min = -55 * 64, max = 125 * 64) int cold) {
    if (code == 0 && cold == 0) {
      return;
    }
    Reading.Emf reading = (Reading.Emf) reading(chip, cold << 2 & 0xFFFF, code << 5 & 0xFFFFFF, 0);

    assertThat(
            ColdJunction.hotJunctionC(ThermocoupleType.K, reading.emfMv(), reading.coldJunctionC()))
        .isCloseTo(code / 128.0, within(0.01));
  }

  /** code = gain * 1.6 * 2^17 * V; 48.634 mV at gain 8 is 81,594, 10 mV at gain 32 is 67,109. */
  @ParameterizedTest(name = "{1}")
  @CsvSource({
    "K, VOLTAGE_GAIN_8, 81594, 48.6339",
    "K, VOLTAGE_GAIN_8, -16777, -10.0000",
    "S, VOLTAGE_GAIN_32, 67109, 10.0000"
  })
  void aVoltageIsTheCouplesEmfAsItStands(ThermocoupleType type, Mode mode, int code, double mv) {
    // bit 6 of the status means nothing in voltage mode
    Reading.Emf reading =
        (Reading.Emf) reading(of(type, mode), COLD_25_C, code << 5 & 0xFFFFFF, 0x40);

    assertThat(reading.emfMv()).isCloseTo(mv, within(0.0001));
    assertThat(reading.coldJunctionC()).isEqualTo(25.0);
  }

  @ParameterizedTest
  @ValueSource(ints = {131071, 200000, -131072, -200000})
  void aVoltageAtTheEndOfTheScaleOrBeyondIsOutOfRange(int code) {
    Max31856 voltage = of(ThermocoupleType.K, Mode.VOLTAGE_GAIN_8);

    assertThat(fault(reading(voltage, COLD_25_C, code << 5 & 0xFFFFFF, 0)))
        .isEqualTo(Fault.OUT_OF_RANGE);
  }

  @ParameterizedTest(name = "status {0}: {1}")
  @CsvSource({
    "01, OPEN_CIRCUIT",
    "02, SHORT_TO_SUPPLY",
    "03, SHORT_TO_SUPPLY",
    "41, OPEN_CIRCUIT",
    "04, WIRING",
    "08, WIRING",
    "10, WIRING",
    "20, WIRING",
    "40, OUT_OF_RANGE",
    "80, OUT_OF_RANGE",
    "FF, SHORT_TO_SUPPLY"
  })
  void everyBitOfTheStatusIsAFaultAndNeverATemperature(String status, Fault fault) {
    int bits = Integer.parseInt(status, 16);

    assertThat(fault(reading(chip, COLD_25_C, 0x3E8000, bits))).isEqualTo(fault);
  }

  @Test
  void noStatusButZeroGivesATemperature() {
    for (int status = 1; status < 256; status++) {
      assertThat(reading(chip, COLD_25_C, 0x3E8000, status)).isInstanceOf(Reading.Faulty.class);
    }
    assertThat(reading(chip, COLD_25_C, 0x3E8000, 0)).isInstanceOf(Reading.Emf.class);
  }

  /** Every single bit of registers 00 to 09 that is not as written, one after the other. */
  @Test
  void aSettingThatDoesNotReadBackIsAWiringFaultAndIsWrittenAgain() {
    for (int bit = 0; bit < 80; bit++) {
      byte[] bytes = bytes(chip, COLD_25_C, 0x3E8000, 0);
      bytes[1 + bit / 8] ^= (byte) (1 << bit % 8);

      Chip.Answer answer = chip.talk("top").take(bytes, AT);

      assertThat(fault(answer.reading().orElseThrow())).isEqualTo(Fault.WIRING);
      assertThat(answer.settingsLost()).isPresent();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {0x00, 0xFF})
  void allZerosAndAllOnesAreAWiringFault(int level) {
    byte[] bytes = new byte[Max31856Frame.BYTES];
    Arrays.fill(bytes, (byte) level);

    assertThat(fault(new Max31856Frame(chip, bytes).reading(AT, "top"))).isEqualTo(Fault.WIRING);
  }

  @Test
  void registersThatWereNeverFilledAreNoTemperature() {
    assertThat(fault(reading(chip, 0, 0, 0))).isEqualTo(Fault.WIRING);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"7D04", "7FFC", "C8FC", "8000"})
  void aChipHotterOrColderThanSiliconWorksIsAWiringFault(String cold) {
    assertThat(fault(reading(chip, Integer.parseInt(cold, 16), 0x3E8000, 0)))
        .isEqualTo(Fault.WIRING);
  }

  /** The ranges of the data sheet's table of types; beyond, the chip clamps and sets bit 6. */
  @ParameterizedTest
  @CsvSource({
    "B, 250, 1820",
    "E, -200, 1000",
    "J, -210, 1200",
    "K, -200, 1372",
    "N, -200, 1300",
    "R, -50, 1768",
    "S, -50, 1768",
    "T, -200, 400"
  })
  void everyLetterIsReadOverItsTableAndNotBeyond(ThermocoupleType type, int least, int most) {
    Max31856 each = of(type, Mode.TEMPERATURE);

    assertThat(reading(each, COLD_25_C, least * 4096 & 0xFFFFFF, 0))
        .isInstanceOf(Reading.Emf.class);
    assertThat(reading(each, COLD_25_C, most * 4096, 0)).isInstanceOf(Reading.Emf.class);
    assertThat(fault(reading(each, COLD_25_C, least * 4096 - 32 & 0xFFFFFF, 0)))
        .isEqualTo(Fault.WIRING);
    assertThat(fault(reading(each, COLD_25_C, most * 4096 + 32, 0))).isEqualTo(Fault.WIRING);
  }

  /** There every firing begins; at its upper end the same bit is out of range. */
  @Test
  void typeBClampedAtTheLowerEndOfTheChipsTableIsTooColdToTell() {
    Max31856 b = of(ThermocoupleType.B, Mode.TEMPERATURE);

    assertThat(fault(reading(b, COLD_25_C, 250 * 4096, 0x40))).isEqualTo(Fault.BELOW_RANGE);
    assertThat(fault(reading(b, COLD_25_C, 1820 * 4096, 0x40))).isEqualTo(Fault.OUT_OF_RANGE);
    assertThat(fault(reading(chip, COLD_25_C, -200 * 4096 & 0xFFFFFF, 0x40)))
        .isEqualTo(Fault.OUT_OF_RANGE);
  }

  /** The reference function of B begins at 0 °C, and so does the chip's range for it. */
  @Test
  void aFrozenBoardIsOutOfRangeForTypeB() {
    assertThat(fault(reading(of(ThermocoupleType.B, Mode.TEMPERATURE), 0xFF80, 0x3E8000, 0)))
        .isEqualTo(Fault.OUT_OF_RANGE);
  }

  @Test
  void aOneShotThatDoesNotComeToItsEndIsNoAnswer() {
    Max31856 oneShot = new Max31856(ThermocoupleType.K, Mode.TEMPERATURE, 1, 50, true, 0);
    byte[] bytes = bytes(oneShot, COLD_25_C, 0x3E8000, 0);
    bytes[1] |= 0x40;

    assertThat(fault(new Max31856Frame(oneShot, bytes).reading(AT, "top")))
        .isEqualTo(Fault.NO_ANSWER);
  }

  /** CR0: automatic, open-circuit test for under 5 kΩ, 50 Hz. CR1: averaging and type code. */
  @ParameterizedTest
  @CsvSource({
    "K, TEMPERATURE, 1, 50, false, 91, 03",
    "K, TEMPERATURE, 16, 60, false, 90, 43",
    "B, TEMPERATURE, 2, 50, true, 11, 10",
    "E, TEMPERATURE, 4, 50, false, 91, 21",
    "J, TEMPERATURE, 8, 50, false, 91, 32",
    "N, TEMPERATURE, 1, 50, false, 91, 04",
    "R, TEMPERATURE, 1, 50, false, 91, 05",
    "S, TEMPERATURE, 1, 50, false, 91, 06",
    "T, TEMPERATURE, 1, 50, false, 91, 07",
    "K, VOLTAGE_GAIN_8, 1, 60, false, 90, 08",
    "S, VOLTAGE_GAIN_32, 1, 60, true, 10, 0C"
  })
  void settingsGoIntoTheRegistersOfTheDataSheet(
      ThermocoupleType type,
      Mode mode,
      int averaging,
      int hz,
      boolean oneShot,
      String cr0,
      String cr1) {
    byte[] settings = new Max31856(type, mode, averaging, hz, oneShot, 0).settings();

    assertThat(settings[0] & 0xFF).isEqualTo(Integer.parseInt(cr0, 16));
    assertThat(settings[1] & 0xFF).isEqualTo(Integer.parseInt(cr1, 16));
    // pin masked, thresholds where nothing reaches them: the values after power came on
    assertThat(List.of(settings[2], settings[3], settings[4], settings[5]))
        .containsExactly((byte) 0xFF, (byte) 0x7F, (byte) 0xC0, (byte) 0x7F);
    assertThat(List.of(settings[6], settings[7], settings[8]))
        .containsExactly((byte) 0xFF, (byte) 0x80, (byte) 0x00);
  }

  @ParameterizedTest
  @CsvSource({"-8, 80", "7.9375, 7F", "-0.0625, FF", "1.5, 18"})
  void theOffsetGoesIntoItsRegister(double offsetC, String register) {
    byte[] settings =
        new Max31856(ThermocoupleType.K, Mode.TEMPERATURE, 1, 50, false, offsetC).settings();

    assertThat(settings[9] & 0xFF).isEqualTo(Integer.parseInt(register, 16));
  }

  /** Conversion times at most, with 15 ms for the open-circuit test. */
  @ParameterizedTest
  @CsvSource({
    "1, 60, false, 105, 170",
    "1, 50, false, 125, 200",
    "16, 60, false, 356, 670",
    "16, 50, false, 425, 800",
    "1, 50, true, 200, 200",
    "4, 60, true, 270, 270"
  })
  void aConversionTakesWhatTheDataSheetSays(
      int averaging, int hz, boolean oneShot, long conversionMs, long firstMs) {
    Max31856 each = new Max31856(ThermocoupleType.K, Mode.TEMPERATURE, averaging, hz, oneShot, 0);

    assertThat(each.conversion()).isEqualTo(Duration.ofMillis(conversionMs));
    assertThat(each.settling()).isEqualTo(Duration.ofMillis(firstMs));
    assertThat(each.rest()).isEqualTo(oneShot ? Duration.ofMillis(firstMs) : Duration.ZERO);
  }

  /** 19-7534: 0.15 % of 78.125 mV is 117.2 µV, 11.7 µV of offset; table 0.13 °C, 2^-7 °C a step. */
  @Test
  void itsErrorsAreThoseOfTheDataSheet() {
    ProbeErrors errors = chip.errors();

    assertThat(errors.offsetUv()).isCloseTo(128.9, within(0.05));
    assertThat(errors.amplifierC()).isEqualTo(0.13);
    assertThat(errors.stepC()).isEqualTo(0.0078125);
    assertThat(errors.stepUv()).isZero();
    assertThat(errors.coldJunctionC()).isEqualTo(0.7);
  }

  /** Code = gain * 1.6 * 2^17 * V: 0.596 µV a step at gain 8, 0.149 at 32. */
  @Test
  void inVoltageModeItsStepsAreThoseOfTheVoltageAndItsTableHasNoPart() {
    ProbeErrors coarse = of(ThermocoupleType.K, Mode.VOLTAGE_GAIN_8).errors();
    ProbeErrors fine = of(ThermocoupleType.S, Mode.VOLTAGE_GAIN_32).errors();

    assertThat(coarse.stepUv()).isCloseTo(0.596, within(0.0005));
    assertThat(fine.stepUv()).isCloseTo(0.149, within(0.0005));
    assertThat(fine.offsetUv()).isCloseTo(32.2, within(0.05));
    assertThat(coarse.stepC() + coarse.amplifierC() + fine.stepC() + fine.amplifierC()).isZero();
  }

  @ParameterizedTest
  @EnumSource(names = {"E", "J", "K", "N", "T"})
  void gain32IsRefusedWhereItEndsTooSoon(ThermocoupleType type) {
    assertThatThrownBy(() -> of(type, Mode.VOLTAGE_GAIN_32)).hasMessageContaining("19.5 mV");
  }

  @ParameterizedTest
  @CsvSource({"3, 50, 0, averaging", "1, 55, 0, mainsHz", "1, 50, 8, Offset", "1, 50, 0.1, 0.0625"})
  void whatTheChipCannotDoIsRefused(int averaging, int hz, double offsetC, String told) {
    assertThatThrownBy(
            () -> new Max31856(ThermocoupleType.K, Mode.TEMPERATURE, averaging, hz, false, offsetC))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(told);
  }

  static Max31856 of(ThermocoupleType type, Mode mode) {
    return new Max31856(type, mode, 1, 50, false, 0);
  }

  private static Fault fault(Reading reading) {
    return ((Reading.Faulty) reading).fault();
  }

  private static Reading reading(Max31856 chip, int cold, int hot, int status) {
    return frame(chip, cold, hot, status).reading(AT, "top");
  }

  private static Max31856Frame frame(Max31856 chip, int cold, int hot, int status) {
    return new Max31856Frame(chip, bytes(chip, cold, hot, status));
  }

  static byte[] bytes(Max31856 chip, int cold, int hot, int status) {
    byte[] bytes = new byte[Max31856Frame.BYTES];
    System.arraycopy(chip.settings(), 0, bytes, 1, 10);
    bytes[11] = (byte) (cold >> 8);
    bytes[12] = (byte) cold;
    bytes[13] = (byte) (hot >> 16);
    bytes[14] = (byte) (hot >> 8);
    bytes[15] = (byte) hot;
    bytes[16] = (byte) status;
    return bytes;
  }
}
