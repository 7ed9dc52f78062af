package org.climbwatch.source.modbus;

import org.climbwatch.source.Source;
import org.climbwatch.source.port.AnswerLedger;
import org.climbwatch.source.port.PolledSource;
import org.climbwatch.source.port.SharedPorts;

/** A probe on a transmitter that speaks Modbus RTU. */
public final class ModbusSource {
  private ModbusSource() {}

  /**
   * Starts asking at once; a port that is missing is waited for.
   *
   * @param ports where a line is shared with other probes
   * @throws IllegalArgumentException when another probe uses the port with other settings
   */
  public static Source open(String probe, ModbusSettings settings, SharedPorts ports) {
    AnswerLedger ledger = new AnswerLedger(settings.silence().toNanos(), System.nanoTime());
    SharedPorts.Place place = ports.join(settings.line(), new UnitTalker(settings, ledger));
    return new PolledSource(probe, ledger, place, settings::describe);
  }
}
