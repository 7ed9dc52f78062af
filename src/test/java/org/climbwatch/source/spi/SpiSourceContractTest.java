package org.climbwatch.source.spi;

import org.climbwatch.source.Source;
import org.climbwatch.source.SourceContract;
import org.climbwatch.thermocouple.ThermocoupleType;

/** The contract on a scripted bus, in time of its own. */
class SpiSourceContractTest extends SourceContract {
  private final ScriptedSpi spi = new ScriptedSpi();
  private long nanos;

  @Override
  protected Source open() {
    SpiSettings settings = new SpiSettings(0, 0, SpiSettings.DEFAULT_CLOCK_HZ, ThermocoupleType.K);
    return new SpiSource(PROBE, settings, spi, () -> nanos);
  }

  @Override
  protected void pass() {
    nanos += 1_000_000_000L;
  }

  @Override
  protected Device device() {
    return spi;
  }
}
