package org.climbwatch.source.spi;

import java.util.function.Function;
import java.util.function.LongSupplier;
import org.climbwatch.source.Source;
import org.climbwatch.source.SourceContract;

/** The contract on an emulated chip, in time of its own. */
abstract class SpiContract extends SourceContract {
  private final Chip chip;
  private final ScriptedSpi spi;
  private long nanos;

  SpiContract(Chip chip, Function<LongSupplier, ChipEmulator> emulator) {
    this.chip = chip;
    spi = new ScriptedSpi(emulator.apply(() -> nanos));
  }

  @Override
  protected Source open() {
    SpiSettings settings = new SpiSettings(0, 0, SpiSettings.DEFAULT_CLOCK_HZ, chip);
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
