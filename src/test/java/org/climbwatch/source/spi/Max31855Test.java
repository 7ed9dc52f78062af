package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Max31855Test {
  private static final Moment AT = new Moment(0, 1);

  /** 25.0000 °C of the chip, in place. */
  private static final int COLD_25_C = 0b0001_1001_0000 << 4;

  /** MAX31855 data sheet 19-5793 Rev 5, table 4: thermocouple temperature data format. */
  @ParameterizedTest(name = "{0} °C")
  @CsvSource({
    "1600.00, 0110 0100 0000 00",
    "1000.00, 0011 1110 1000 00",
    "100.75, 0000 0110 0100 11",
    "25.00, 0000 0001 1001 00",
    "0.00, 0000 0000 0000 00",
    "-0.25, 1111 1111 1111 11",
    "-1.00, 1111 1111 1111 00",
    "-250.00, 1111 0000 0110 00"
  })
  void thermocoupleBitsMeanWhatTheDataSheetSays(double celsius, String bits) {
    assertThat(Max31855.thermocoupleC(bits(bits) << 18)).isEqualTo(celsius);
    // whatever the other bits are
    assertThat(Max31855.thermocoupleC(bits(bits) << 18 | 0x3FFFF)).isEqualTo(celsius);
  }

  /** MAX31855 data sheet 19-5793 Rev 5, table 5: reference junction temperature data format. */
  @ParameterizedTest(name = "{0} °C")
  @CsvSource({
    "127.0000, 0111 1111 0000",
    "100.5625, 0110 0100 1001",
    "25.0000, 0001 1001 0000",
    "0.0000, 0000 0000 0000",
    "-0.0625, 1111 1111 1111",
    "-1.0000, 1111 1111 0000",
    "-20.0000, 1110 1100 0000",
    "-55.0000, 1100 1001 0000"
  })
  void coldJunctionBitsMeanWhatTheDataSheetSays(double celsius, String bits) {
    assertThat(Max31855.coldJunctionC(bits(bits) << 4)).isEqualTo(celsius);
    assertThat(Max31855.coldJunctionC(bits(bits) << 4 | 0xFFFF000F)).isEqualTo(celsius);
  }

  /**
   * The chip shows 1203.25 °C at a cold junction of 25.00 °C when a Type K couple is at 1222 °C:
   * 41.276 µV/°C (data sheet 19-5793 Rev 5, thermal characteristics) times 1178.25 °C is 48.633 mV.
   * Independently, by the reference function of NIST Monograph 175, computed from its coefficients
   * by another program: E(1222 °C) 49.6375 mV less E(25 °C) 1.0002 mV is 48.6372 mV, within half a
   * step of the chip.
   */
  @Test
  void theStraightLineOfTheChipIsUndone() {
    Reading.Emf reading = (Reading.Emf) decode(shown(1203.25) | COLD_25_C);

    assertThat(reading.emfMv()).isCloseTo(48.633, within(0.0005));
    assertThat(reading.emfMv()).isCloseTo(49.6375 - 1.0002, within(0.041276 * 0.25 / 2));
    assertThat(reading.coldJunctionC()).isEqualTo(25.0);
    assertThat(reading.at()).isEqualTo(AT);
    assertThat(reading.probe()).isEqualTo("top");
  }

  /** Both junctions alike give no emf, whatever the letter: the formula of the data sheet. */
  @ParameterizedTest
  @CsvSource({
    "K, 41.276",
    "J, 57.953",
    "N, 36.256",
    "S, 9.587",
    "T, 52.18",
    "E, 76.373",
    "R, 10.506"
  })
  void everyLetterHasTheSlopeOfTheDataSheet(ThermocoupleType type, double uvPerC) {
    Reading.Emf level = (Reading.Emf) decode(shown(25) | COLD_25_C, type);
    Reading.Emf hotter = (Reading.Emf) decode(shown(125) | COLD_25_C, type);

    assertThat(level.emfMv()).isZero();
    assertThat(hotter.emfMv()).isCloseTo(uvPerC * 100 / 1000, within(0.00005 + 1e-12));
  }

  @Test
  void noChipIsMadeForTypeB() {
    assertThatThrownBy(() -> Max31855.slopeUvPerC(ThermocoupleType.B))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("no MAX31855 is made for type B");
  }

  /**
   * Data sheet 19-5793 Rev 5, thermal characteristics: gain and offset, -20 to 85 °C, in degrees of
   * the letter's line, µV/°C.
   */
  @ParameterizedTest
  @CsvSource({
    "K, 4, 41.276",
    "J, 2, 57.953",
    "N, 4, 36.256",
    "S, 4, 9.587",
    "T, 2, 52.18",
    "E, 3, 76.373",
    "R, 4, 10.506"
  })
  void everyLetterHasTheErrorsOfTheDataSheet(ThermocoupleType type, double lineC, double uvPerC) {
    assertThat(new Max31855(type).errors())
        .isEqualTo(new ProbeErrors(0, lineC * uvPerC, 0, 2, 0, 0.25 * uvPerC, 0));
  }

  /** Causes as the data sheet's table 2 has them; which of several is told is our choice. */
  @ParameterizedTest(name = "SCV SCG OC {0}: {1}")
  @CsvSource({
    "001, OPEN_CIRCUIT",
    "010, SHORT_TO_GROUND",
    "011, SHORT_TO_GROUND",
    "100, SHORT_TO_SUPPLY",
    "101, SHORT_TO_SUPPLY",
    "110, SHORT_TO_SUPPLY",
    "111, SHORT_TO_SUPPLY"
  })
  void everyCauseAndCombinationIsAFaultAndNeverATemperature(String causes, Fault fault) {
    int bits = 1 << 16 | bits(causes);

    assertThat(fault(shown(500) | COLD_25_C | bits)).isEqualTo(fault);
    // D31 0 and D30 to D18 1, with the thermocouple unconnected: data sheet, fault description
    assertThat(fault(shown(2047.75) | COLD_25_C | bits)).isEqualTo(fault);
  }

  @ParameterizedTest(name = "SCV SCG OC {0}")
  @ValueSource(strings = {"001", "010", "011", "100", "101", "110", "111"})
  void aCauseWithoutTheFaultBitIsAWiringFault(String causes) {
    assertThat(fault(shown(500) | COLD_25_C | bits(causes))).isEqualTo(Fault.WIRING);
  }

  @Test
  void theFaultBitWithoutACauseIsAWiringFault() {
    assertThat(fault(shown(500) | COLD_25_C | 1 << 16)).isEqualTo(Fault.WIRING);
  }

  /** A bus without a chip: data line held low or high. */
  @Test
  void allZerosAndAllOnesAreAWiringFault() {
    assertThat(fault(0)).isEqualTo(Fault.WIRING);
    assertThat(fault(0xFFFFFFFF)).isEqualTo(Fault.WIRING);
  }

  @Test
  void aReservedBitIsAWiringFaultAlsoBesideAProperFault() {
    assertThat(fault(shown(500) | COLD_25_C | 1 << 17)).isEqualTo(Fault.WIRING);
    assertThat(fault(shown(500) | COLD_25_C | 1 << 3)).isEqualTo(Fault.WIRING);
    assertThat(fault(shown(500) | COLD_25_C | 1 << 16 | 1 | 1 << 3)).isEqualTo(Fault.WIRING);
  }

  /** Bits shifted by one: seen with the wrong edge or ringing, the chip itself at 127.94 °C. */
  @ParameterizedTest(name = "{0} °C")
  @ValueSource(doubles = {-128, -55.0625, 125.0625, 127.9375})
  void aChipHotterOrColderThanSiliconWorksIsAWiringFault(double coldJunctionC) {
    assertThat(fault(shown(500) | cold(coldJunctionC))).isEqualTo(Fault.WIRING);
  }

  @ParameterizedTest(name = "{0} °C")
  @ValueSource(doubles = {-55, 0, 125})
  void aChipAtTheEdgeOfItsRangeIsRead(double coldJunctionC) {
    assertThat(((Reading.Emf) decode(shown(500) | cold(coldJunctionC))).coldJunctionC())
        .isEqualTo(coldJunctionC);
  }

  @ParameterizedTest(name = "{0} °C")
  @ValueSource(doubles = {-2048, -270.25, 1800.25, 2047.75})
  void whatTheChipCannotMeasureIsOutOfRange(double celsius) {
    assertThat(fault(shown(celsius) | COLD_25_C)).isEqualTo(Fault.OUT_OF_RANGE);
  }

  /** One junction at 0.00 °C is weather; only both together are no chip. */
  @Test
  void aJunctionAtZeroIsRead() {
    assertThat(decode(COLD_25_C)).isInstanceOf(Reading.Emf.class);
    assertThat(decode(shown(20))).isInstanceOf(Reading.Emf.class);
  }

  @Test
  void anythingButFourBytesIsAMistakeOfTheCaller() {
    assertThatThrownBy(() -> Max31855.decode(new byte[3], ThermocoupleType.K, AT, "top"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("4 bytes, not 3");
  }

  private static int bits(String text) {
    return Integer.parseInt(text.replace(" ", ""), 2);
  }

  private static int shown(double celsius) {
    return (int) (celsius * 4) << 18;
  }

  private static int cold(double celsius) {
    return ((int) (celsius * 16) & 0xFFF) << 4;
  }

  private static Fault fault(int frame) {
    return ((Reading.Faulty) decode(frame)).fault();
  }

  private static Reading decode(int frame) {
    return decode(frame, ThermocoupleType.K);
  }

  private static Reading decode(int frame, ThermocoupleType type) {
    return Max31855.decode(ByteBuffer.allocate(4).putInt(frame).array(), type, AT, "top");
  }
}
