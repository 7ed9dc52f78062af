package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.source.spi.Max31856.Mode;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chips that are told something, on a bus with an emulator that knows its data sheet. */
class RegisterChipsTest {
  private static final Moment AT = new Moment(0, 0);

  private long nanos;
  private final Max31856Emulator max31856 = new Max31856Emulator(() -> nanos);
  private final Ads1118Emulator ads1118 = new Ads1118Emulator(() -> nanos);
  private final Max6675Emulator max6675 = new Max6675Emulator(() -> nanos);

  @Test
  void nothingIsGivenBeforeTheFirstConversionIsOver() {
    SpiSource source = max31856(false, Mode.TEMPERATURE, 0);

    assertThat(source.read(AT)).isEmpty();
    pass(199);
    assertThat(source.read(AT)).isEmpty();
    pass(1);

    assertThat(emf(source.read(AT)).emfMv()).isCloseTo(40, within(0.001));
    assertThat(max31856.register(0)).isEqualTo(0x91);
  }

  @ParameterizedTest
  @CsvSource({"false, TEMPERATURE", "true, TEMPERATURE", "false, VOLTAGE_GAIN_8"})
  void everyLookAtItsPaceFindsANewConversion(boolean oneShot, Mode mode) {
    SpiSource source = max31856(oneShot, mode, 1.5);
    source.read(AT);
    pass(200);
    source.read(AT);
    int before = max31856.conversions();

    for (int look = 0; look < 50; look++) {
      pass(source.pace().toMillis());
      Reading.Emf emf = emf(source.read(AT));
      assertThat(emf.emfMv()).isCloseTo(40, within(0.001));
      assertThat(emf.coldJunctionC()).isEqualTo(26.5);
    }

    assertThat(max31856.conversions() - before).isEqualTo(50);
  }

  @Test
  void aChipThatLostItsPowerIsSetUpAgainAndShowsNoOldTemperature() {
    SpiSource source = max31856(false, Mode.TEMPERATURE, 0);
    source.read(AT);
    pass(200);
    emf(source.read(AT));

    max31856.brownsOut();
    assertThat(fault(source.read(AT))).isEqualTo(Fault.WIRING);
    assertThat(source.describe()).contains("its power failed for a moment", "set up again 1 times");
    // no answer between: until the first conversion the fault stands
    assertThat(fault(source.read(AT))).isEqualTo(Fault.WIRING);
    pass(200);

    assertThat(emf(source.read(AT)).emfMv()).isCloseTo(40, within(0.001));
    assertThat(source.describe()).contains(": reading;");
  }

  @Test
  void aChipThatTakesNoSettingsPointsAtMosi() {
    max31856.hearsNothing();
    SpiSource source = max31856(false, Mode.TEMPERATURE, 0);

    for (int look = 0; look < 5; look++) {
      source.read(AT);
      pass(200);
    }

    assertThat(fault(source.read(AT))).isEqualTo(Fault.WIRING);
    assertThat(source.describe()).contains("look at the MOSI wire");
  }

  /** Over- and undervoltage stops conversions: the old temperature stays in its register. */
  @ParameterizedTest
  @CsvSource({"false", "true"})
  void anOverdrivenInputIsAFaultAndNotTheTemperatureBefore(boolean oneShot) {
    SpiSource source = max31856(oneShot, Mode.TEMPERATURE, 0);
    source.read(AT);
    pass(200);
    emf(source.read(AT));

    max31856.isOverdriven();
    for (int look = 0; look < 5; look++) {
      pass(200);
      assertThat(fault(source.read(AT))).isEqualTo(Fault.SHORT_TO_SUPPLY);
    }
  }

  @Test
  void theConverterTakesTurnsAndGivesThreeReadingsInFourLooks() {
    SpiSource source = ads1118();
    source.read(AT);
    List<Boolean> given = new ArrayList<>();
    for (int look = 0; look < 12; look++) {
      pass(source.pace().toMillis());
      Optional<Reading> reading = source.read(AT);
      given.add(reading.isPresent());
      reading.ifPresent(each -> assertThat(emf(reading).emfMv()).isCloseTo(40, within(0.012)));
      reading.ifPresent(each -> assertThat(emf(reading).coldJunctionC()).isEqualTo(25.0));
    }

    assertThat(given)
        .isEqualTo(
            List.of(false, true, true, true, false, true, true, true, false, true, true, true));
    assertThat(ads1118.conversions()).isEqualTo(12);
  }

  /** Sooner, the sensor's result would be taken for the couple's or the other way about. */
  @Test
  void theConverterIsNotAskedBeforeItsConversionIsOver() {
    SpiSource source = ads1118();
    for (int look = 0; look < 400; look++) {
      source
          .read(AT)
          .ifPresent(
              reading -> assertThat(((Reading.Emf) reading).emfMv()).isCloseTo(40, within(0.012)));
      pass(35);
    }
    assertThat(ads1118.conversions()).isGreaterThan(90);
  }

  @Test
  void aNumberIsNotFrozenByLookingTooOften() {
    SpiSource source = source(new Max6675(25), max6675);
    max6675.senses(40, 25);
    source.read(AT);
    max6675.senses(20, 25);
    double last = Double.NaN;
    for (int look = 0; look < 10; look++) {
      pass(50);
      Optional<Reading> reading = source.read(AT);
      last = reading.map(each -> ((Reading.Linearised) each).temperatureC()).orElse(last);
    }

    // E(K, 508.8 °C) is 21.0 mV: NIST Monograph 175
    assertThat(last).isCloseTo(508.4, within(0.5));
  }

  /** Chip select stuck: the frame is good bit by bit, and the same for ever. */
  @Test
  void aFrozenAnswerBecomesAWiringFaultAndPassesWhenItMoves() {
    Max31855Emulator max31855 = new Max31855Emulator();
    SpiSource source = source(new Max31855(ThermocoupleType.K), max31855);
    max31855.senses(40, 25);
    for (int second = 0; second < 600; second++) {
      assertThat(source.read(AT).orElseThrow()).isInstanceOf(Reading.Emf.class);
      pass(1000);
    }
    assertThat(fault(source.read(AT))).isEqualTo(Fault.WIRING);
    assertThat(source.describe()).contains("not the least change for 10 min; look at CS");

    max31855.senses(40.02, 25);
    assertThat(source.read(AT).orElseThrow()).isInstanceOf(Reading.Emf.class);
  }

  @Test
  void paceIsAConversionAndAGrain() {
    assertThat(ads1118().pace()).isEqualTo(Duration.ofMillis(145));
    assertThat(source(new Max31855(ThermocoupleType.K), new Max31855Emulator()).pace())
        .isEqualTo(Duration.ofMillis(105));
    assertThat(source(new Max6675(25), max6675).pace()).isEqualTo(Duration.ofMillis(225));
  }

  private SpiSource max31856(boolean oneShot, Mode mode, double offsetC) {
    max31856.senses(40, 25);
    return source(new Max31856(ThermocoupleType.K, mode, 1, 50, oneShot, offsetC), max31856);
  }

  private SpiSource ads1118() {
    ads1118.senses(40, 25);
    return source(new Ads1118(ThermocoupleType.K, Ads1118.Inputs.AIN0_AIN1, 256, 8), ads1118);
  }

  private SpiSource source(Chip chip, ChipEmulator emulator) {
    ScriptedSpi spi = new ScriptedSpi(emulator);
    spi.carries();
    SpiSettings settings = new SpiSettings(0, 0, SpiSettings.DEFAULT_CLOCK_HZ, chip);
    return new SpiSource("top", settings, spi, () -> nanos);
  }

  private void pass(long millis) {
    nanos += millis * 1_000_000L;
  }

  private static Reading.Emf emf(Optional<Reading> reading) {
    return (Reading.Emf) reading.orElseThrow();
  }

  private static Fault fault(Optional<Reading> reading) {
    return ((Reading.Faulty) reading.orElseThrow()).fault();
  }
}
