package org.climbwatch.source.spi;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * A MAX31856: 19 bits, linearised by itself or as a bare voltage, with registers. SPI mode 1, clock
 * 5 MHz at most, most significant bit first.
 *
 * <pre>
 *  first byte of a transfer: address, 0x80 added to write; it counts up from there
 *
 *  00 CR0   CMODE | 1SHOT | OCFAULT 1:0 | CJ | FAULT | FAULTCLR | 50/60 Hz
 *  01 CR1   0 | AVGSEL 2:0 | TC TYPE 3:0
 *  02 MASK  03 CJHF  04 CJLF  05-06 LTHFT  07-08 LTLFT      pin and thresholds
 *  09 CJTO  signed, 0.0625 °C, added to the cold junction by the chip
 *  0A-0B    cold junction      signed 14 bits, left-justified, 0.015625 °C
 *  0C-0E    hot junction       signed 19 bits, left-justified, 0.0078125 °C
 *           or in voltage mode: code = gain * 1.6 * 2^17 * V, full scale at 2^17
 *  0F SR    CJ RANGE | TC RANGE | CJHIGH | CJLOW | TCHIGH | TCLOW | OVUV | OPEN
 *
 *  a look: out  00 xx xx ...  17 bytes     in  (nothing yet) CR0 CR1 ... SR
 * </pre>
 *
 * <p>Each look reads all sixteen registers in one transfer, so each one proves that the chip is
 * there, has kept its settings, and that no bit fell over on the way. Settings that are not as
 * written are {@link Fault#WIRING} and are written again: a chip that lost its power for a moment
 * comes back with conversions switched off and would show an old temperature for ever.
 *
 * <p>The chip's temperature is turned back into the couple's emf, E(hot) - E(cold), by the
 * reference function and the cold junction of the same look. What is kept is then what every other
 * amplifier gives, and a cold junction found wrong can be corrected afterwards; the core's way back
 * restores the chip's temperature within 0.01 °C. In the chip's table is an error of its own (Type
 * K: 0.13 °C). In voltage mode the emf comes straight, without that, and the reference function
 * does it all.
 *
 * <p>The thresholds are set to what the chip can never reach, so that their bits in SR are
 * impossible. OVUV says that an input lies below ground or above the supply: a foreign voltage,
 * told as a short to the supply. The open-circuit test is the one for a loop of less than 5 kΩ; it
 * runs every 16th conversion.
 *
 * @param type letter of the couple
 * @param mode what the chip converts into
 * @param averaging samples to a reading: 1, 2, 4, 8 or 16
 * @param mainsHz 50 or 60: the hum that its filter takes out
 * @param oneShot whether each look begins the next conversion, in place of converting all the time
 * @param coldJunctionOffsetC °C that the chip adds to its cold junction, -8 to 7.9375 by 0.0625
 * @see "Maxim MAX31856 data sheet, 19-7534 Rev 0"
 */
public record Max31856(
    ThermocoupleType type,
    Mode mode,
    int averaging,
    int mainsHz,
    boolean oneShot,
    double coldJunctionOffsetC)
    implements Chip {
  /** What the chip converts the couple's voltage into. */
  public enum Mode {
    TEMPERATURE("temperature", 8),
    VOLTAGE_GAIN_8("voltage_gain_8", 8),
    VOLTAGE_GAIN_32("voltage_gain_32", 32);

    private final String word;
    private final int gain;

    Mode(String word, int gain) {
      this.word = word;
      this.gain = gain;
    }

    /** The word of the configuration. */
    public String word() {
      return word;
    }

    int gain() {
      return gain;
    }
  }

  public static final List<Integer> AVERAGES = List.of(1, 2, 4, 8, 16);
  public static final List<Integer> MAINS_HZ = List.of(50, 60);
  public static final double OFFSET_STEP_C = 0.0625;
  public static final double LEAST_OFFSET_C = -8;
  public static final double MOST_OFFSET_C = 7.9375;

  /** Registers 00 to 09 as they are after power came on. */
  static final byte[] POWER_ON = {
    0, 3, (byte) 0xFF, 0x7F, (byte) 0xC0, 0x7F, -1, (byte) 0x80, 0, 0
  };

  private static final int AUTOMATIC = 0x80;
  private static final int CJTO = 0x09;
  static final int ONE_SHOT = 0x40;
  private static final int OPEN_TEST = 0x10;
  private static final int REJECT_50_HZ = 0x01;

  /** Its noise of 0.4 to 1.3 µV is more than a step: a minute of sameness is no signal. */
  private static final Duration STILL = Duration.ofMinutes(1);

  public Max31856 {
    require(AVERAGES.contains(averaging), "averaging must be 1, 2, 4, 8 or 16, was " + averaging);
    require(MAINS_HZ.contains(mainsHz), "mainsHz must be 50 or 60, was " + mainsHz);
    double steps = coldJunctionOffsetC / OFFSET_STEP_C;
    require(
        coldJunctionOffsetC >= LEAST_OFFSET_C
            && coldJunctionOffsetC <= MOST_OFFSET_C
            && steps == Math.rint(steps),
        "coldJunctionOffsetC must be -8 to 7.9375 in steps of 0.0625, was " + coldJunctionOffsetC);
    require(
        mode != Mode.VOLTAGE_GAIN_32 || reachesFarWithGain32(type),
        "gain 32 ends at 19.5 mV, too soon for type " + type + "; allowed for B, R, S");
  }

  /** Whether 19.5 mV is a temperature worth a kiln: 1650 °C for R, but 473 °C for K. */
  public static boolean reachesFarWithGain32(ThermocoupleType type) {
    return type == ThermocoupleType.B || type == ThermocoupleType.R || type == ThermocoupleType.S;
  }

  @Override
  public String name() {
    return "MAX31856 type " + type;
  }

  /** Clock phase must be 1; the polarity is free. */
  @Override
  public int spiMode() {
    return 1;
  }

  @Override
  public int mostClockHz() {
    return 5_000_000;
  }

  /** Maxima of the conversion table, each further averaged sample, and the open-circuit test. */
  @Override
  public Duration conversion() {
    return oneShot ? first() : milliseconds(mainsHz == 50 ? 110 : 90, mainsHz == 50 ? 20 : 16.7);
  }

  @Override
  public Duration rest() {
    return oneShot ? first() : Duration.ZERO;
  }

  @Override
  public Duration settling() {
    return first();
  }

  private Duration first() {
    return milliseconds(mainsHz == 50 ? 185 : 155, mainsHz == 50 ? 40 : 33.3);
  }

  private Duration milliseconds(double one, double eachFurther) {
    double openTest = 15; // 13.3 typically; no maximum is given
    return Duration.ofMillis((long) Math.ceil(one + openTest + (averaging - 1) * eachFurther));
  }

  @Override
  public Optional<Duration> stillAtMost(boolean hot) {
    return Optional.of(STILL);
  }

  /**
   * -20 to 85 °C. Full-scale and linearity error of 0.15 % of full scale (78.125 mV at gain 8,
   * 19.531 at 32) and the offset, which together stand for up to so many µV at any signal; 0.13 °C
   * and steps of the chip's table on top where it linearises. Which gain it takes for a letter is
   * not stated, so the coarser is assumed. The data sheet has the offset for gain 8 alone (11.7
   * µV); a quarter of it for gain 32 is our assumption.
   */
  @Override
  public ProbeErrors errors() {
    double offsetUv = mode.gain() == 32 ? 0.0015 * 19_531 + 2.9 : 0.0015 * 78_125 + 11.7;
    boolean linearises = mode == Mode.TEMPERATURE;
    double tableC = linearises ? 0.13 : 0;
    double stepC = linearises ? Max31856Frame.HOT_STEP_C : 0;
    double stepUv = linearises ? 0 : Max31856Frame.voltageStepUv(mode);
    return new ProbeErrors(tableC, offsetUv, 0, 0.7, stepC, stepUv, 0);
  }

  @Override
  public Talk talk(String probe) {
    return new Max31856Talk(this, probe);
  }

  /** CR0 with conversions off. */
  int stoppedControl() {
    return OPEN_TEST | (mainsHz == 50 ? REJECT_50_HZ : 0);
  }

  /** Registers 00 to 09 as they are to be, the self-clearing bit of a one-shot left out. */
  byte[] settings() {
    byte[] settings = POWER_ON.clone();
    settings[0] = (byte) (stoppedControl() | (oneShot ? 0 : AUTOMATIC));
    int average = Integer.numberOfTrailingZeros(averaging);
    settings[1] = (byte) (average << 4 | typeCode());
    settings[CJTO] = (byte) Math.round(coldJunctionOffsetC / OFFSET_STEP_C);
    return settings;
  }

  private int typeCode() {
    return switch (mode) {
      case VOLTAGE_GAIN_8 -> 0b1000;
      case VOLTAGE_GAIN_32 -> 0b1100;
      case TEMPERATURE ->
          switch (type) {
            case B -> 0;
            case E -> 1;
            case J -> 2;
            case K -> 3;
            case N -> 4;
            case R -> 5;
            case S -> 6;
            case T -> 7;
          };
    };
  }

  private static void require(boolean holds, String message) {
    if (!holds) {
      throw new IllegalArgumentException(message);
    }
  }
}
