package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Max31855Test {
  private static final Moment AT = new Moment(0, 1000);

  /** MAX31855 data sheet 19-5793 Rev 5, table 4: hot junction, with the cold one at 25 °C. */
  @ParameterizedTest
  @CsvSource({
    "1600.00, 01100100000000", "1000.00, 00111110100000", "100.75, 00000110010011",
    "25.00, 00000001100100", "0.00, 00000000000000", "-0.25, 11111111111111",
    "-1.00, 11111111111100", "-250.00, 11110000011000"
  })
  void hotJunctionOfTheDataSheet(double shownC, String bits) {
    Reading.Emf emf = (Reading.Emf) read(frame(bits, "000110010000", 0));

    assertThat(emf.coldJunctionC()).isEqualTo(25.0);
    assertThat(emf.emfMv() / 0.041276 + 25).isCloseTo(shownC, within(0.002));
  }

  /** The same, table 5: cold junction, with 100.75 °C shown. */
  @ParameterizedTest
  @CsvSource({
    "127.0000, 011111110000", "100.5625, 011001001001", "25.0000, 000110010000",
    "0.0000, 000000000000", "-0.0625, 111111111111", "-1.0000, 111111110000",
    "-20.0000, 111011000000", "-55.0000, 110010010000"
  })
  void coldJunctionOfTheDataSheet(double coldC, String bits) {
    Reading.Emf emf = (Reading.Emf) read(frame("00000110010011", bits, 0));

    assertThat(emf.coldJunctionC()).isCloseTo(coldC, within(0.0005));
  }

  /** Worked by hand from the data sheet's formula and the Type K reference function. */
  @Test
  void straightLineIsUndoneSoThatTwelveHundredDegreesAreTrue() {
    int shown = (int) (1203.25 / 0.25);
    Reading.Emf emf = (Reading.Emf) read(shown << 18 | (25 * 16) << 4);

    assertThat(emf.emfMv()).isCloseTo(48.633, within(0.001));
    assertThat(ColdJunction.hotJunctionC(ThermocoupleType.K, emf.emfMv(), emf.coldJunctionC()))
        .isCloseTo(1221.9, within(0.1));
  }

  @ParameterizedTest
  @CsvSource({
    "1, OPEN_CIRCUIT",
    "2, SHORT_TO_GROUND",
    "4, SHORT_TO_SUPPLY",
    "3, OPEN_CIRCUIT",
    "6, SHORT_TO_GROUND",
    "7, OPEN_CIRCUIT"
  })
  void everyFaultBitIsNamed(int bits, Fault fault) {
    assertThat(read(0x7FFC0000 | 1 << 16 | 0x1900 | bits))
        .isEqualTo(Reading.faulty(AT, "upper", fault));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -1, 0x01921900, 0x01901908, 0x01911900, 0x01901901})
  void impossibleFramesAreWiringFaultsAndNeverTemperatures(int frame) {
    assertThat(read(frame)).isEqualTo(Reading.faulty(AT, "upper", Fault.WIRING));
  }

  @Test
  void anyFrameGivesASignalOrAFaultAndABrokenOneNeverASignal() {
    SplittableRandom random = new SplittableRandom(31_855);
    for (int i = 0; i < 2_000_000; i++) {
      int frame = random.nextInt();
      boolean sound = (frame & (1 << 17 | 1 << 3 | 1 << 16 | 7)) == 0 && frame != 0;
      assertThat(read(frame) instanceof Reading.Emf).as("frame %08x", frame).isEqualTo(sound);
    }
  }

  private static Reading read(int frame) {
    byte[] bytes = {(byte) (frame >> 24), (byte) (frame >> 16), (byte) (frame >> 8), (byte) frame};
    return Max31855.reading(AT, "upper", ThermocoupleType.K, bytes);
  }

  private static int frame(String hot, String cold, int low) {
    return Integer.parseInt(hot, 2) << 18 | Integer.parseInt(cold, 2) << 4 | low;
  }
}
