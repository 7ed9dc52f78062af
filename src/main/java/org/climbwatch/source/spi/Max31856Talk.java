package org.climbwatch.source.spi;

import java.util.List;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/** Writes the settings of a {@link Max31856} and reads all of its registers at each look. */
final class Max31856Talk implements Chip.Talk {
  private static final byte WRITE = (byte) 0x80;

  private final Max31856 chip;
  private final String probe;
  private boolean hasKeptSettings;

  Max31856Talk(Max31856 chip, String probe) {
    this.chip = chip;
    this.probe = probe;
  }

  /** The filter may be changed only with conversions off, so they are switched on last. */
  @Override
  public List<byte[]> setUp() {
    byte[] settings = chip.settings();
    byte[] rest = settings.clone();
    rest[0] = (byte) (WRITE | 1); // the address of CR1 takes the place of CR0
    return List.of(new byte[] {WRITE, (byte) chip.stoppedControl()}, rest, start());
  }

  @Override
  public List<byte[]> look() {
    byte[] readAll = new byte[Max31856Frame.BYTES]; // address 00, and no matter what after it
    return chip.oneShot() ? List.of(readAll, start()) : List.of(readAll);
  }

  private byte[] start() {
    int start = chip.oneShot() ? Max31856.ONE_SHOT : 0;
    return new byte[] {WRITE, (byte) (chip.settings()[0] & 0xFF | start)};
  }

  @Override
  public Chip.Answer take(byte[] answer, Moment at) {
    Max31856Frame frame = new Max31856Frame(chip, answer);
    Reading reading = frame.reading(at, probe);
    if (frame.keepsSettings()) {
      hasKeptSettings = true;
      return Chip.Answer.of(reading);
    }
    return Chip.Answer.settingsLost(reading, why(frame));
  }

  private String why(Max31856Frame frame) {
    if (!frame.isAsAfterPowerOn()) {
      return "not the registers that were written; look at supply, MISO and chip select";
    }
    return hasKeptSettings
        ? "it lost its settings, so its power failed for a moment; look at its supply"
        : "it takes no settings; look at the MOSI wire";
  }
}
