package org.climbwatch.source.spi;

import java.io.IOException;
import java.util.Arrays;

/**
 * Buses on which an emulated chip answers wherever one is set up, well or in one kind of trouble.
 */
public final class EmulatedBuses implements SpiLink.Buses {
  /** What is the matter with all of them. */
  public enum Trouble {
    NONE,
    /** The couple's wire is broken. */
    OPEN_COUPLE,
    /** The couple touches ground, where a chip can tell. */
    TOUCHES_GROUND,
    /** The couple touches the supply, where a chip can tell. */
    TOUCHES_SUPPLY,
    /** MISO lies on ground, or the board has no supply. */
    ONLY_ZEROS,
    /** MISO lies on the supply, or hangs free with a pull-up. */
    ONLY_ONES,
    /** The chips hear nothing of what they are told. */
    MOSI_OFF,
    /** The bus is not switched on. */
    NO_DEVICE
  }

  private final Trouble trouble;
  private final double emfMv;
  private final double coldJunctionC;

  /**
   * @param emfMv mV that each couple gives
   * @param coldJunctionC °C of each chip
   */
  public EmulatedBuses(Trouble trouble, double emfMv, double coldJunctionC) {
    this.trouble = trouble;
    this.emfMv = emfMv;
    this.coldJunctionC = coldJunctionC;
  }

  @Override
  public SpiLink.Opener to(SpiSettings settings) {
    ChipEmulator chip = emulator(settings.chip());
    return () -> {
      if (trouble == Trouble.NO_DEVICE) {
        throw new IOException(settings.device() + " is not there");
      }
      return new Link(chip);
    };
  }

  private ChipEmulator emulator(Chip chip) {
    if (chip instanceof Max31855) {
      return max31855();
    } else if (chip instanceof Max31856) {
      return max31856();
    }
    ChipEmulator plain =
        chip instanceof Max6675
            ? new Max6675Emulator(System::nanoTime)
            : new Ads1118Emulator(System::nanoTime);
    senses(plain);
    return plain;
  }

  private ChipEmulator max31855() {
    Max31855Emulator chip = new Max31855Emulator();
    senses(chip);
    if (trouble == Trouble.TOUCHES_GROUND) {
      chip.touchesGround();
    } else if (trouble == Trouble.TOUCHES_SUPPLY) {
      chip.touchesSupply();
    }
    return chip;
  }

  private ChipEmulator max31856() {
    Max31856Emulator chip = new Max31856Emulator(System::nanoTime);
    senses(chip);
    if (trouble == Trouble.MOSI_OFF) {
      chip.hearsNothing();
    } else if (trouble == Trouble.TOUCHES_SUPPLY) {
      chip.isOverdriven();
    }
    return chip;
  }

  private void senses(ChipEmulator chip) {
    chip.senses(emfMv, coldJunctionC);
    if (trouble == Trouble.OPEN_COUPLE) {
      chip.losesCouple();
    }
  }

  /** The wire from the chip to the Pi. */
  private final class Link implements SpiLink {
    private final ChipEmulator chip;

    Link(ChipEmulator chip) {
      this.chip = chip;
    }

    @Override
    public void transfer(byte[] out, byte[] in) {
      boolean deaf = trouble == Trouble.MOSI_OFF && chip instanceof Ads1118Emulator;
      byte[] answer = chip.transfer(deaf ? new byte[out.length] : out);
      System.arraycopy(answer, 0, in, 0, in.length);
      if (trouble == Trouble.ONLY_ZEROS || trouble == Trouble.ONLY_ONES) {
        Arrays.fill(in, (byte) (trouble == Trouble.ONLY_ONES ? -1 : 0));
      }
    }

    @Override
    public void close() {
      // nothing is held
    }
  }
}
