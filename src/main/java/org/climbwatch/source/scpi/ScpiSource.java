package org.climbwatch.source.scpi;

import org.climbwatch.source.Source;
import org.climbwatch.source.port.AnswerLedger;
import org.climbwatch.source.port.PolledSource;
import org.climbwatch.source.port.SharedPorts;

/** A probe on an instrument that speaks SCPI. */
public final class ScpiSource {
  private ScpiSource() {}

  /**
   * Starts asking at once; a port that is missing is waited for.
   *
   * @param ports where a line is shared with other probes on the same instrument
   * @throws IllegalArgumentException when another probe uses the port with other settings
   */
  public static Source open(String probe, ScpiSettings settings, SharedPorts ports) {
    AnswerLedger ledger = new AnswerLedger(settings.silence().toNanos(), System.nanoTime());
    ScpiTalker talker = new ScpiTalker(settings, ledger);
    SharedPorts.Place place = ports.join(settings.line(), talker);
    return new PolledSource(probe, ledger, place, talker::describe);
  }
}
