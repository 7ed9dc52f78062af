package org.climbwatch.source.spi;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Fault;
import org.climbwatch.thermocouple.ProbeErrors;
import org.climbwatch.thermocouple.ThermocoupleType;

/**
 * An ADS1118: a plain 16-bit converter with a temperature sensor of its own, which serves as the
 * cold junction. SPI mode 1, clock 4 MHz at most, most significant bit first.
 *
 * <pre>
 *  bit  15   14..12  11..9   8     7..5   4        3        2..1  0
 *      +----+-------+-----+------+------+---------+---------+----+---+
 *      | SS | MUX   | PGA | MODE | RATE | TS_MODE | PULL_UP | 01 | 1 |  configuration
 *      +----+-------+-----+------+------+---------+---------+----+---+
 *      SS = start one conversion, reads 0; MODE 1 = one at a time; TS_MODE 1 = the sensor;
 *      01 = take this word (anything else is ignored); bit 0 reads 1
 *
 *      | signal: signed 16 bits, range / 32768 |      | sensor: signed 14 bits, 0.03125 °C | 00 |
 *
 *  a look, 32 clocks:  out  configuration of the next conversion | 0000
 *                      in   result of the last one               | that configuration read back
 * </pre>
 *
 * <p>Each look fetches a result and begins the next conversion: the sensor once, then the couple
 * three times, and again; a look at the sensor gives no reading. The read-back proves at each look
 * that the chip is there and has understood. A bus without a chip gives zeros or ones there, and a
 * bridge from MOSI to MISO the zeros of the second half.
 *
 * <p>The converter knows no thermocouple faults. With 1 MΩ or more from AIN0 to the supply and from
 * AIN1 to ground an open couple drives the result to its highest code, {@link Fault#OPEN_CIRCUIT};
 * <em>without those resistors an open couple is not seen</em>. Through them flows some 1.6 µA,
 * which a lead of 10 Ω turns into 16 µV, 0.4 °C for Type K.
 *
 * @param type letter of the couple
 * @param inputs between which the couple sits
 * @param rangeMv 256, 512, 1024, 2048, 4096 or 6144: full scale, mV; 256 is finest
 * @param samplesPerSecond 8, 16, 32, 64, 128, 250, 475 or 860; 8 averages mains hum best
 * @see "Texas Instruments ADS1118 data sheet, SBAS457F"
 */
public record Ads1118(ThermocoupleType type, Inputs inputs, int rangeMv, int samplesPerSecond)
    implements Chip {
  /** Plus and minus of the couple. */
  public enum Inputs {
    AIN0_AIN1("ain0_ain1", 0b000),
    AIN2_AIN3("ain2_ain3", 0b011);

    private final String word;
    private final int mux;

    Inputs(String word, int mux) {
      this.word = word;
      this.mux = mux;
    }

    /** The word of the configuration. */
    public String word() {
      return word;
    }
  }

  /** By their codes from 0b101 down. */
  public static final List<Integer> RANGES_MV = List.of(256, 512, 1024, 2048, 4096, 6144);

  /** By their codes from 0b000 up. */
  public static final List<Integer> RATES = List.of(8, 16, 32, 64, 128, 250, 475, 860);

  static final int FRAME_BYTES = 4;
  static final int START = 1 << 15;
  static final int SENSOR = 1 << 4;

  private static final int ONE_AT_A_TIME = 1 << 8;

  /** Of the chip's data output, as after power came on: a chip that is not spoken to reads ones. */
  private static final int PULL_UP = 1 << 3;

  private static final int TAKE_THIS = 0b01 << 1;
  private static final int READS_ONE = 1;
  private static final int FINEST_RANGE_CODE = 0b101;

  private static final int HIGHEST_CODE = 0x7FFF;
  private static final int LOWEST_CODE = -0x8000;
  private static final double STEPS = 32768;
  private static final double SENSOR_STEP_C = 0.03125;

  /** Operating range of the chip. */
  private static final double LEAST_COLD_JUNCTION_C = -40;

  private static final double MOST_COLD_JUNCTION_C = 125;

  private static final Duration STILL_HOT = Duration.ofMinutes(10);
  private static final Duration STILL_COLD = Duration.ofMinutes(60);

  public Ads1118 {
    if (!RANGES_MV.contains(rangeMv)) {
      throw new IllegalArgumentException(
          "rangeMv must be one of " + RANGES_MV + ", was " + rangeMv);
    }
    if (!RATES.contains(samplesPerSecond)) {
      throw new IllegalArgumentException(
          "samplesPerSecond must be one of " + RATES + ", was " + samplesPerSecond);
    }
  }

  @Override
  public String name() {
    return "ADS1118 type " + type;
  }

  @Override
  public int spiMode() {
    return 1;
  }

  @Override
  public int mostClockHz() {
    return 4_000_000;
  }

  /** One over the rate, which holds within 10 %, and a millisecond for waking up. */
  @Override
  public Duration conversion() {
    return Duration.ofMillis((long) Math.ceil(1000 / (0.9 * samplesPerSecond)) + 1);
  }

  @Override
  public Duration rest() {
    return conversion();
  }

  @Override
  public Duration settling() {
    return conversion();
  }

  /** Steps of 0.2 °C, and a noise of hardly one, so that an honest signal may rest for long. */
  @Override
  public Optional<Duration> stillAtMost(boolean hot) {
    return Optional.of(hot ? STILL_HOT : STILL_COLD);
  }

  /**
   * Offset within 2 steps and linearity within 1; gain within 0.15 % at 25 °C (electrical
   * characteristics of the data sheet, at ±2.048 V), and 0.1 % between that range and another (from
   * memory). The gain's drift of 40 ppm/°C is not added on top: to a board at 60 °C it makes 0.14
   * %, and the root of the three squares, 0.23 %, is less than the 0.25 % taken. Sensor within 1 °C
   * from -40 to 125 °C (0.5 from 0 to 70).
   */
  @Override
  public ProbeErrors errors() {
    double stepUv = stepMv() * 1000;
    return new ProbeErrors(0, 3 * stepUv, 2500, 1, 0, stepUv, 0);
  }

  @Override
  public Talk talk(String probe) {
    return new Ads1118Talk(this, probe);
  }

  /** The word that begins a conversion of the couple, or of the sensor. */
  int configuration(boolean sensor) {
    return START
        | inputs.mux << 12
        | FINEST_RANGE_CODE - RANGES_MV.indexOf(rangeMv) << 9
        | ONE_AT_A_TIME
        | RATES.indexOf(samplesPerSecond) << 5
        | (sensor ? SENSOR : 0)
        | PULL_UP
        | TAKE_THIS
        | READS_ONE;
  }

  /** mV to a step: 0.0078125 in the finest range. */
  double stepMv() {
    return rangeMv / STEPS;
  }

  /** What a result at an end of the scale means. */
  static Optional<Fault> faultOfSignal(int result) {
    if (result == HIGHEST_CODE) {
      return Optional.of(Fault.OPEN_CIRCUIT);
    }
    return result == LOWEST_CODE ? Optional.of(Fault.OUT_OF_RANGE) : Optional.empty();
  }

  /** °C of the chip: the upper 14 bits of a result. */
  static double sensorC(int result) {
    return (result >> 2) * SENSOR_STEP_C;
  }

  /** Whether silicon works there. */
  static boolean isPossible(double coldJunctionC) {
    return coldJunctionC >= LEAST_COLD_JUNCTION_C && coldJunctionC <= MOST_COLD_JUNCTION_C;
  }

  /** Signed 16 bits from a place in a frame on. */
  static int word(byte[] frame, int from) {
    return (short) ((frame[from] & 0xFF) << 8 | frame[from + 1] & 0xFF);
  }
}
