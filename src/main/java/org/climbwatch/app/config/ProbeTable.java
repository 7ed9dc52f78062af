package org.climbwatch.app.config;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.climbwatch.source.serial.SerialSettings;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.source.simulated.FiringKind;
import org.climbwatch.source.simulated.Place;
import org.climbwatch.source.simulated.SimulationSettings;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.ProbeSettings;

/** The keys of {@code [[probe]]}. */
final class ProbeTable {
  private static final List<String> SOURCES =
      List.of("serial", "spi", "modbus", "scpi", "model", "recording");

  /** Of a device that says nothing of itself: those of the usual amplifiers, a MAX31855's step. */
  private static final ProbeErrors USUAL_ERRORS =
      new ProbeErrors(2, 0, 0, 2, ProbeErrors.USUAL_STEP_C, 0, 0);

  private final Section probe;
  private final String sourceWord;
  private final ThermocoupleType type;
  private final Section spiSection;
  private final Optional<SpiTable> spi;

  ProbeTable(Section probe) {
    this.probe = probe;
    sourceWord = probe.choice("source", "", SOURCES);
    if (probe.present() && !probe.has("source")) {
      probe.mistake(
          "source",
          "is missing; say where the readings come from, allowed: " + Shown.list(SOURCES));
    }
    type =
        ThermocoupleType.valueOf(
            probe.choice(
                "type",
                "K",
                Arrays.stream(ThermocoupleType.values()).map(ThermocoupleType::name).toList()));
    spiSection = probe.section("spi");
    spi =
        sourceWord.equals("spi")
            ? Optional.of(new SpiTable(probe, spiSection, type))
            : Optional.empty();
  }

  /** An amplifier on SPI has the limits of error and the steps of its data sheet. */
  ProbeSettings settings() {
    String name = probe.text("name").orElse("probe");
    ToleranceClass tolerance =
        ToleranceClass.ofWord(
            probe.choice(
                "tolerance",
                "iec_2",
                Arrays.stream(ToleranceClass.values()).map(ToleranceClass::word).toList()));
    ProbeErrors errors =
        errors(spi.map(table -> table.settings().chip().errors()).orElse(USUAL_ERRORS));
    boolean compared = probe.flag("compared", true);
    return new ProbeSettings(
        name,
        new MeasuringChain(type, tolerance, errors),
        compared,
        probe.optionalNumber("limit_c", 50, 1800));
  }

  /** A limit in degrees that somebody writes stands for the whole amplifier, so for its volts. */
  private ProbeErrors errors(ProbeErrors usual) {
    double amplifierC =
        probe.number("amplifier_error_c", usual.amplifierC(), 0, ProbeErrors.MOST_C);
    boolean whole = probe.has("amplifier_error_c");
    double offsetUv = whole ? 0 : usual.offsetUv();
    double gainPpm = whole ? 0 : usual.gainPpm();
    offsetUv = probe.number("offset_error_uv", offsetUv, 0, ProbeErrors.MOST_OFFSET_UV);
    gainPpm = probe.number("gain_error_ppm", gainPpm, 0, ProbeErrors.MOST_GAIN_PPM);
    double coldC =
        probe.number("cold_junction_error_c", usual.coldJunctionC(), 0, ProbeErrors.MOST_C);
    double stepC = probe.number("step_c", usual.stepC(), 0, ProbeErrors.MOST_STEP_C);
    double stepUv = probe.has("step_c") ? 0 : usual.stepUv();
    stepUv = probe.number("step_uv", stepUv, 0, ProbeErrors.MOST_STEP_UV);
    double driftC = probe.number("drift_c", 0, 0, ProbeErrors.MOST_C);
    return new ProbeErrors(amplifierC, offsetUv, gainPpm, coldC, stepC, stepUv, driftC);
  }

  ProbeSource source() {
    // known before the choice is, so that none of them is called unknown
    SOURCES.forEach(probe::section);
    String chosen = sourceWord.isEmpty() ? "model" : sourceWord;
    for (String word : SOURCES) {
      if (!word.equals(chosen) && !sourceWord.isEmpty() && probe.section(word).present()) {
        probe.mistake(
            word, "is not used, for the source is \"" + sourceWord + "\"; take the table out");
      }
    }
    Section table = chosen.equals("spi") ? spiSection : probe.section(chosen);
    ProbeSource source = source(chosen, table);
    table.refuseTheRest();
    return source;
  }

  private ProbeSource source(String word, Section table) {
    return switch (word) {
      case "serial" -> serial(table);
      case "spi" -> new ProbeSource.Spi(spi.orElseThrow().settings());
      case "modbus" -> new ProbeSource.Modbus(new ModbusTable(probe, table).read());
      case "scpi" -> new ProbeSource.Scpi(new ScpiTable(probe, table).read());
      case "recording" -> recording(table);
      default -> model(table);
    };
  }

  private ProbeSource serial(Section serial) {
    return new ProbeSource.Serial(
        new PortKeys(probe, serial, "serial").port(),
        (int) serial.oneOf("baud", SerialSettings.DEFAULT_BAUD, SerialSettings.BAUDS),
        PortKeys.seconds(serial, "silence_s", SerialSettings.DEFAULT_SILENCE, 1, 600),
        serial.flag("clear_dtr", false));
  }

  private static ProbeSource model(Section model) {
    List<String> firings = Arrays.stream(FiringKind.values()).map(FiringKind::word).toList();
    List<String> faults = Arrays.stream(FaultKind.values()).map(FaultKind::word).toList();
    List<String> places = Arrays.stream(Place.values()).map(Place::word).toList();
    return new ProbeSource.Model(
        model.choice("firing", "stoneware", firings),
        model.whole("seed", 1, 0, Long.MAX_VALUE),
        model.choice("fault", "none", faults),
        model.choice("place", "upper", places),
        (int) model.whole("looks", 1, 1, SimulationSettings.MOST_LOOKS),
        model.number("speed", 1, 1, 3600));
  }

  private ProbeSource recording(Section recording) {
    Optional<Path> file = recording.path("file");
    if (!recording.has("file")) {
      probe.mistake("recording", "has no file; name the CSV to play, file = \"firing.csv\"");
    }
    return new ProbeSource.Recording(
        file.orElse(Path.of("")), recording.number("speed", 1, 1, 3600));
  }
}
