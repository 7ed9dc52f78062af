package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Max6675Test {
  private static final Moment AT = new Moment(0, 1);

  private final Max6675 chip = new Max6675(25);

  /** MAX6675 data sheet 19-2235 Rev 3, serial interface: 12 bits of 0.25 °C, 0 to 1023.75 °C. */
  @ParameterizedTest(name = "{1} °C")
  @CsvSource({"8, 0.25", "800, 25", "32000, 1000", "32760, 1023.75"})
  void temperatureBitsMeanWhatTheDataSheetSays(int frame, double celsius) {
    assertThat(Max6675.shownC(frame)).isEqualTo(celsius);
    assertThat(Max6675.shownC(frame | 7)).isEqualTo(celsius);
  }

  /**
   * What the chip shows of a true temperature by its line of 41 µV/°C, data sheet 19-2235 Rev 3, at
   * 25 °C: the emf of NIST Monograph 175, Type K, E(800) 33.275 mV, E(1000) 41.276 mV, E(25) 1.000.
   */
  @ParameterizedTest(name = "{0} °C")
  @CsvSource({"800, 33.275", "1000, 41.276", "500, 20.644", "100, 4.096"})
  void theStraightLineOfTheChipIsUndone(double trueC, double emfMv) {
    double shownC = (emfMv - 1.000) * 1000 / 41 + 25;

    Reading.Linearised reading = (Reading.Linearised) decode((int) Math.round(shownC * 4) << 3);

    assertThat(reading.temperatureC()).isCloseTo(trueC, within(0.15));
    assertThat(reading.coldJunctionC()).isEmpty();
    assertThat(reading.at()).isEqualTo(AT);
    assertThat(reading.probe()).isEqualTo("top");
  }

  /** What the chip does not tell costs no more than is counted for it. */
  @Property
  void aBoardAtAnotherTemperatureThanAssumedCostsNoMoreThanStated(
      @ForAll @DoubleRange(min = 0, max = 60) double boardC,
      @ForAll @DoubleRange(min = 100, max = 1000) double trueC) {
    ThermocoupleType k = ThermocoupleType.K;
    double shownC = (k.emfMv(trueC) - k.emfMv(boardC)) * 1000 / 41 + boardC;

    Reading.Linearised reading = (Reading.Linearised) decode((int) Math.round(shownC * 4) << 3);

    double slopes = k.seebeckUvPerC(25) / k.seebeckUvPerC(trueC);
    double halfStep = 0.125 * 41 / k.seebeckUvPerC(trueC);
    assertThat(reading.temperatureC())
        .isCloseTo(trueC, within(Max6675.ASSUMPTION_ERROR_C * slopes + halfStep + 0.001));
  }

  /**
   * 17 steps of 10.25 µV above 700 °C, 3 °C of compensation: data sheet, electrical
   * characteristics.
   */
  @Test
  void itsErrorsAreThoseOfTheDataSheetAndOfTheAssumption() {
    assertThat(chip.errors()).isEqualTo(new ProbeErrors(0, 174.25, 0, 3.7, 0, 10.25, 0));
  }

  @Test
  void anOpenCoupleIsAFaultWhateverTheTemperatureBitsSay() {
    for (int code = 0; code < 0x1000; code++) {
      assertThat(fault(code << 3 | 4)).isEqualTo(Fault.OPEN_CIRCUIT);
      assertThat(fault(code << 3 | 5)).isEqualTo(Fault.OPEN_CIRCUIT);
    }
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(ints = {0, 1, 0xFFFF, 0xFFFE, 0x8000, 0x8320, 0x0322, 0x0326, 0x7FFF})
  void aBusWithoutAChipAndBitsThatAreAlwaysZeroAreAWiringFault(int frame) {
    assertThat(fault(frame)).isEqualTo(Fault.WIRING);
  }

  @Test
  void theHighestCodeMayStandForAnythingAbove() {
    assertThat(fault(0x7FF8)).isEqualTo(Fault.OUT_OF_RANGE);
    assertThat(decode(0x7FF0)).isInstanceOf(Reading.Linearised.class);
  }

  /** All 65,536 frames; the rules written out anew. The chip's range on its own line, corrected. */
  @Test
  void everyFrameIsAFaultOrATemperatureInTheRangeOfTheChip() {
    int temperatures = 0;
    for (int frame = 0; frame <= 0xFFFF; frame++) {
      boolean good = frame >>> 15 == 0 && (frame & 6) == 0 && frame >> 3 != 0 && frame < 0x7FF8;
      Reading reading = decode(frame);
      assertThat(reading instanceof Reading.Linearised).isEqualTo(good);
      if (reading instanceof Reading.Linearised own) {
        temperatures++;
        assertThat(own.temperatureC()).isBetween(-1.0, 1024.0);
      }
    }
    assertThat(temperatures).isEqualTo(2 * 4094);
  }

  @Test
  void looksAreKeptApartByAConversion() {
    assertThat(chip.rest()).isEqualTo(Duration.ofMillis(220));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-20.01, 85.01, Double.NaN})
  void aColdJunctionBeyondTheChipsRangeIsRefused(double celsius) {
    assertThatThrownBy(() -> new Max6675(celsius))
        .hasMessageContaining("assumedColdJunctionC must be -20 to 85");
  }

  private Fault fault(int frame) {
    return ((Reading.Faulty) decode(frame)).fault();
  }

  private Reading decode(int frame) {
    return chip.decode(new byte[] {(byte) (frame >> 8), (byte) frame}, AT, "top");
  }
}
