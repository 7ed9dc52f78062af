package org.climbwatch.app.config;

import java.util.Arrays;
import java.util.List;
import org.climbwatch.source.spi.Ads1118;
import org.climbwatch.source.spi.Chip;
import org.climbwatch.source.spi.ChipKind;
import org.climbwatch.source.spi.Max31855;
import org.climbwatch.source.spi.Max31856;
import org.climbwatch.source.spi.Max6675;
import org.climbwatch.source.spi.SpiSettings;
import org.climbwatch.thermocouple.ThermocoupleType;

/** The keys of {@code [probe.spi]}: where the chip sits, which it is, and its own settings. */
final class SpiTable {
  private final Section probe;
  private final Section spi;
  private final ThermocoupleType type;
  private final ChipKind kind;
  private final SpiSettings settings;

  /**
   * @param probe the table above, which names the letter
   */
  SpiTable(Section probe, Section spi, ThermocoupleType type) {
    this.probe = probe;
    this.spi = spi;
    this.type = type;
    kind = ChipKind.ofWord(spi.choice("chip", ChipKind.MAX31855.word(), ChipKind.words()));
    int bus = (int) spi.whole("bus", 0, 0, SpiSettings.MOST_BUS);
    int chipSelect = (int) spi.whole("chip_select", 0, 0, SpiSettings.MOST_CHIP_SELECT);
    Max31855 max31855 = max31855();
    Max31856 max31856 = max31856();
    Max6675 max6675 = max6675();
    Ads1118 ads1118 = ads1118();
    Chip chip =
        switch (kind) {
          case MAX31855 -> max31855;
          case MAX31856 -> max31856;
          case MAX6675 -> max6675;
          case ADS1118 -> ads1118;
        };
    settings = new SpiSettings(bus, chipSelect, clockHz(chip), chip);
  }

  SpiSettings settings() {
    return settings;
  }

  private int clockHz(Chip chip) {
    int most = chip.mostClockHz() / 1000;
    int usual = SpiSettings.DEFAULT_CLOCK_HZ / 1000;
    return 1000 * (int) spi.whole("clock_khz", usual, SpiSettings.LEAST_CLOCK_HZ / 1000, most);
  }

  private Max31855 max31855() {
    boolean made = type != ThermocoupleType.B;
    if (kind == ChipKind.MAX31855 && !made) {
      probe.wrong(
          "type",
          "B",
          "is not made as a MAX31855",
          "take the letter printed on the chip, or another chip, for example \"max31856\"");
    }
    return new Max31855(made ? type : ThermocoupleType.K);
  }

  private Max31856 max31856() {
    List<String> modes = Arrays.stream(Max31856.Mode.values()).map(Max31856.Mode::word).toList();
    of(ChipKind.MAX31856, "mode", "mains_hz", "averaging", "conversion", "cold_junction_offset_c");
    String word = spi.choice("mode", Max31856.Mode.TEMPERATURE.word(), modes);
    return new Max31856(
        type,
        reachingFar(Max31856.Mode.values()[modes.indexOf(word)]),
        (int) spi.oneOf("averaging", 1, Max31856.AVERAGES),
        (int) spi.oneOf("mains_hz", 50, Max31856.MAINS_HZ),
        spi.choice("conversion", "automatic", List.of("automatic", "one_shot")).equals("one_shot"),
        offsetC());
  }

  private Max31856.Mode reachingFar(Max31856.Mode mode) {
    if (mode != Max31856.Mode.VOLTAGE_GAIN_32 || Max31856.reachesFarWithGain32(type)) {
      return mode;
    }
    if (kind == ChipKind.MAX31856) {
      spi.wrong(
          "mode",
          mode.word(),
          "ends at 19.5 mV, too soon for type " + type,
          "take \"voltage_gain_8\"; gain 32 is for B, R and S");
    }
    return Max31856.Mode.VOLTAGE_GAIN_8;
  }

  private double offsetC() {
    double offsetC =
        spi.number("cold_junction_offset_c", 0, Max31856.LEAST_OFFSET_C, Max31856.MOST_OFFSET_C);
    double stepped = Math.rint(offsetC / Max31856.OFFSET_STEP_C) * Max31856.OFFSET_STEP_C;
    if (stepped != offsetC) {
      spi.wrong(
          "cold_junction_offset_c",
          offsetC,
          "is none of the chip's steps of 0.0625 °C",
          "the nearest is " + Shown.plain(stepped));
    }
    return stepped;
  }

  private Max6675 max6675() {
    if (kind == ChipKind.MAX6675 && type != ThermocoupleType.K) {
      probe.wrong(
          "type",
          type.name(),
          "is not what a MAX6675 measures",
          "it is made for K alone; take \"K\"");
    }
    of(ChipKind.MAX6675, "assumed_cold_junction_c");
    return new Max6675(
        spi.number(
            "assumed_cold_junction_c",
            Max6675.DEFAULT_COLD_JUNCTION_C,
            Max6675.LEAST_COLD_JUNCTION_C,
            Max6675.MOST_COLD_JUNCTION_C));
  }

  private Ads1118 ads1118() {
    List<String> inputs = Arrays.stream(Ads1118.Inputs.values()).map(Ads1118.Inputs::word).toList();
    of(ChipKind.ADS1118, "inputs", "range_mv", "samples_per_s");
    String word = spi.choice("inputs", Ads1118.Inputs.AIN0_AIN1.word(), inputs);
    return new Ads1118(
        type,
        Ads1118.Inputs.values()[inputs.indexOf(word)],
        (int) spi.oneOf("range_mv", Ads1118.RANGES_MV.get(0), Ads1118.RANGES_MV),
        (int) spi.oneOf("samples_per_s", Ads1118.RATES.get(0), Ads1118.RATES));
  }

  /** Notes keys of a chip that is not the chosen one: they would do nothing. */
  private void of(ChipKind owner, String... keys) {
    for (String key : keys) {
      if (spi.has(key) && kind != owner) {
        spi.mistake(
            key,
            "does nothing, for the chip is \""
                + kind.word()
                + "\"; it is a setting of \""
                + owner.word()
                + "\", so take it out");
      }
    }
  }
}
