package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.SplittableRandom;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;

/**
 * Millions of frames for each chip, half of them noise, half good ones with bits fallen over,
 * shifted, held low or held high. No exception, no temperature from a frame that breaks a rule, and
 * none beyond the chip's range. The rules are written out anew from the data sheets.
 */
class BrokenFramesIT {
  private static final int FRAMES = 4_000_000;
  private static final Moment AT = new Moment(0, 1);
  private static final ThermocoupleType K = ThermocoupleType.K;

  private final SplittableRandom random = new SplittableRandom(1118);
  private int signals;

  /** mV between which a frame of the chip can lie. */
  private double leastMv;

  private double mostMv;

  @Test
  void max31855() {
    for (ThermocoupleType type : ThermocoupleType.values()) {
      if (type != ThermocoupleType.B) {
        Chip.Talk talk = new Max31855(type).talk("top");
        for (int i = 0; i < FRAMES / 4; i++) {
          byte[] good = bytes(random.nextInt(7200) << 18 | random.nextInt(2000) << 4, 4);
          byte[] frame = broken(good, i);
          long bits = number(frame, 0, 4);
          boolean breaksRules =
              bits == 0 || (bits & 0x3000F) != 0 || outside((short) bits >> 4, -55 * 16, 125 * 16);
          // shown -270 to 1800 °C, the chip itself at -55 to 125 °C
          double slopeMvPerC = Max31855.slopeUvPerC(type) / 1000;
          leastMv = slopeMvPerC * (-270 - 125);
          mostMv = slopeMvPerC * (1800 + 55);
          check(talk.take(frame, AT), breaksRules, frame);
        }
      }
    }
    assertThat(signals).isGreaterThan(FRAMES / 10);
  }

  @Test
  void max31856() {
    for (Max31856.Mode mode :
        new Max31856.Mode[] {Max31856.Mode.TEMPERATURE, Max31856.Mode.VOLTAGE_GAIN_8}) {
      Max31856 chip = Max31856Test.of(K, mode);
      Chip.Talk talk = chip.talk("top");
      // the couple's own ends beside the chip at -55 and 125 °C, or the scale of gain 8
      boolean bare = mode != Max31856.Mode.TEMPERATURE;
      leastMv = bare ? -78.125 : K.emfMv(-200) - K.emfMv(125);
      mostMv = bare ? 78.125 : K.emfMv(1372) - K.emfMv(-55);
      for (int i = 0; i < FRAMES; i++) {
        int status = random.nextInt(4) == 0 ? random.nextInt(256) : 0;
        byte[] good =
            Max31856Test.bytes(chip, random.nextInt(8000), random.nextInt(1400 * 4096), status);
        byte[] frame = broken(good, i);
        boolean breaksRules = (frame[16] & (mode == Max31856.Mode.TEMPERATURE ? 0xFF : 0xBF)) != 0;
        for (int register = 0; register < 10; register++) {
          breaksRules |= frame[1 + register] != chip.settings()[register];
        }
        breaksRules |= outside((short) number(frame, 11, 2) >> 2, -55 * 64, 125 * 64);
        int code = (int) (number(frame, 13, 3) << 8) >> 13;
        breaksRules |=
            mode == Max31856.Mode.TEMPERATURE
                ? outside(code, -200 * 128, 1372 * 128)
                : outside(code, -131071, 131070);
        check(talk.take(frame, AT), breaksRules, frame);
      }
    }
    assertThat(signals).isGreaterThan(FRAMES / 10);
  }

  @Test
  void max6675() {
    Chip.Talk talk = new Max6675(25).talk("top");
    for (int i = 0; i < FRAMES; i++) {
      byte[] frame = broken(bytes(random.nextInt(4096) << 3, 2), i);
      long bits = number(frame, 0, 2);
      boolean breaksRules = bits < 8 || (bits & 0x8006) != 0 || bits >= 0x7FF8;
      check(talk.take(frame, AT), breaksRules, frame);
    }
    assertThat(signals).isGreaterThan(FRAMES / 10);
  }

  @Test
  void ads1118() {
    leastMv = -256;
    mostMv = 256;
    Chip.Talk talk = new Ads1118(K, Ads1118.Inputs.AIN0_AIN1, 256, 8).talk("top");
    talk.setUp();
    boolean hasCold = false;
    int turn = 0;
    for (int i = 0; i < FRAMES; i++) {
      boolean sensor = turn == 0;
      turn = (turn + 1) % 4;
      int readBack = turn == 0 ? 0x0B1B : 0x0B0B;
      int result = sensor ? random.nextInt(-2000, 4500) << 2 : random.nextInt(-0x8000, 0x8000);
      byte[] frame = broken(bytes(result << 16 | readBack, 4), i);
      boolean breaksRules = number(frame, 2, 2) != readBack;
      int arrived = (short) number(frame, 0, 2);
      if (breaksRules) {
        Chip.Answer answer = talk.take(frame, AT);
        check(answer, true, frame);
        assertThat(answer.settingsLost().isPresent()).isTrue();
        talk.setUp();
        turn = 0;
        hasCold = false;
      } else if (sensor) {
        hasCold = !outside(arrived >> 2, -40 * 32, 125 * 32);
        Chip.Answer answer = talk.take(frame, AT);
        assertThat(answer.reading().isEmpty()).isEqualTo(hasCold);
      } else {
        check(talk.take(frame, AT), !hasCold || outside(arrived, -0x7FFF, 0x7FFE), frame);
      }
    }
    assertThat(signals).isGreaterThan(FRAMES / 20);
  }

  private void check(Chip.Answer answer, boolean breaksRules, byte[] frame) {
    Reading reading = answer.reading().orElseThrow();
    if (reading instanceof Reading.Faulty) {
      return;
    }
    signals++;
    if (breaksRules) {
      throw new AssertionError(HexFormat.of().formatHex(frame) + " was taken as " + reading);
    }
    if (!isWithinTheChipsReach(reading)) {
      throw new AssertionError(HexFormat.of().formatHex(frame) + " gave " + reading);
    }
  }

  private boolean isWithinTheChipsReach(Reading reading) {
    if (reading instanceof Reading.Linearised own) {
      return own.temperatureC() >= -270 && own.temperatureC() <= 1372;
    }
    Reading.Emf emf = (Reading.Emf) reading;
    return emf.emfMv() >= leastMv
        && emf.emfMv() <= mostMv
        && emf.coldJunctionC() >= -55
        && emf.coldJunctionC() <= 125;
  }

  private static boolean outside(long value, long least, long most) {
    return value < least || value > most;
  }

  private byte[] broken(byte[] good, int which) {
    byte[] frame = good.clone();
    switch (which % 8) {
      case 0, 1 -> random.nextBytes(frame);
      case 2, 3 -> {}
      case 4 -> flip(frame);
      case 5 -> {
        flip(frame);
        flip(frame);
      }
      case 6 -> shift(frame);
      default -> hold(frame);
    }
    return frame;
  }

  private void flip(byte[] frame) {
    frame[random.nextInt(frame.length)] ^= (byte) (1 << random.nextInt(8));
  }

  /** One clock too many or too few. */
  private void shift(byte[] frame) {
    boolean left = random.nextBoolean();
    byte[] old = frame.clone();
    for (int i = 0; i < frame.length; i++) {
      int before = i == 0 ? 0 : old[i - 1] & 0xFF;
      int after = i == frame.length - 1 ? 0 : old[i + 1] & 0xFF;
      int own = old[i] & 0xFF;
      frame[i] = (byte) (left ? own << 1 | after >> 7 : own >> 1 | before << 7);
    }
  }

  /** The line drops or rises in the middle and stays there. */
  private void hold(byte[] frame) {
    byte level = (byte) (random.nextBoolean() ? 0xFF : 0);
    Arrays.fill(frame, random.nextInt(frame.length), frame.length, level);
  }

  private static byte[] bytes(int bits, int count) {
    byte[] bytes = new byte[count];
    for (int i = 0; i < count; i++) {
      bytes[i] = (byte) (bits >> 8 * (count - 1 - i));
    }
    return bytes;
  }

  private static long number(byte[] frame, int from, int count) {
    long number = 0;
    for (int i = 0; i < count; i++) {
      number = number << 8 | frame[from + i] & 0xFF;
    }
    return number;
  }
}
