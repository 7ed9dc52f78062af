package org.climbwatch.app.config;

import java.util.Map;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.thermocouple.MeasuringChain;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.ProbeSettings;

/** One probe's lines in the record of settings. */
final class ProbeLines {
  private ProbeLines() {}

  static void put(Map<String, String> lines, String key, ProbeSettings probe) {
    lines.put(key + "name", SettingsLines.escaped(probe.name()));
    lines.put(key + "type", probe.type().name());
    lines.put(key + "tolerance", probe.toleranceClass().word());
    ProbeErrors errors = probe.chain().errors();
    lines.put(key + "amplifier_error_c", "" + errors.amplifierC());
    lines.put(key + "offset_error_uv", "" + errors.offsetUv());
    lines.put(key + "gain_error_ppm", "" + errors.gainPpm());
    lines.put(key + "cold_junction_error_c", "" + errors.coldJunctionC());
    lines.put(key + "step_c", "" + errors.stepC());
    lines.put(key + "step_uv", "" + errors.stepUv());
    lines.put(key + "drift_c", "" + errors.driftC());
    if (!probe.chain().correction().isNone()) {
      lines.put(key + "correction", probe.chain().correction().text());
    }
    lines.put(key + "compared", "" + probe.compared());
    probe.limitC().ifPresent(limit -> lines.put(key + "limit_c", "" + limit));
  }

  /** What an older record lacks was not counted when it was written: 0, not today's default. */
  static ProbeSettings take(SettingsLines lines, String key) {
    String name = lines.text(key + "name", "probe");
    MeasuringChain chain =
        new MeasuringChain(
            lines.word(key + "type", ThermocoupleType.K, ThermocoupleType::valueOf),
            lines.word(key + "tolerance", ToleranceClass.IEC_2, ToleranceClass::ofWord),
            new ProbeErrors(
                lines.number(key + "amplifier_error_c", 2),
                lines.number(key + "offset_error_uv", 0),
                lines.number(key + "gain_error_ppm", 0),
                lines.number(key + "cold_junction_error_c", 2),
                lines.number(key + "step_c", 0),
                lines.number(key + "step_uv", 0),
                lines.number(key + "drift_c", 0)),
            lines.read(key + "correction", Correction.NONE, "correction", Correction::ofText));
    return new ProbeSettings(
        name, chain, lines.flag(key + "compared", true), lines.optionalNumber(key + "limit_c"));
  }
}
