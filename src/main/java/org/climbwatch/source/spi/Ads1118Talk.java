package org.climbwatch.source.spi;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/** Takes turns between the sensor and the couple of an {@link Ads1118}. */
final class Ads1118Talk implements Chip.Talk {
  /** One turn of the sensor, the rest of the couple. */
  private static final int ROUND = 4;

  private final Ads1118 chip;
  private final String probe;
  private int turn;
  private OptionalDouble coldJunctionC = OptionalDouble.empty();

  Ads1118Talk(Ads1118 chip, String probe) {
    this.chip = chip;
    this.probe = probe;
  }

  @Override
  public List<byte[]> setUp() {
    turn = 0;
    coldJunctionC = OptionalDouble.empty();
    return List.of(begin(turn));
  }

  @Override
  public List<byte[]> look() {
    return List.of(begin(turn + 1));
  }

  private byte[] begin(int which) {
    int word = chip.configuration(isSensor(which));
    return new byte[] {(byte) (word >> 8), (byte) word, 0, 0};
  }

  private static boolean isSensor(int which) {
    return which % ROUND == 0;
  }

  @Override
  public Chip.Answer take(byte[] answer, Moment at) {
    boolean sensor = isSensor(turn);
    turn = (turn + 1) % ROUND;
    int readBack = Ads1118.word(answer, 2) & 0xFFFF;
    if (readBack != (chip.configuration(isSensor(turn)) & ~Ads1118.START)) {
      return Chip.Answer.settingsLost(
          Reading.faulty(at, probe, Fault.WIRING),
          "its settings do not read back; look at supply, MISO, MOSI and chip select");
    }
    int result = Ads1118.word(answer, 0);
    return sensor ? keepColdJunction(result, at) : Chip.Answer.of(signal(result, at));
  }

  private Chip.Answer keepColdJunction(int result, Moment at) {
    double celsius = Ads1118.sensorC(result);
    boolean possible = Ads1118.isPossible(celsius);
    coldJunctionC = possible ? OptionalDouble.of(celsius) : OptionalDouble.empty();
    return possible
        ? Chip.Answer.nothingYet()
        : Chip.Answer.of(Reading.faulty(at, probe, Fault.WIRING));
  }

  private Reading signal(int result, Moment at) {
    Optional<Fault> fault = Ads1118.faultOfSignal(result);
    if (fault.isPresent() || coldJunctionC.isEmpty()) {
      return Reading.faulty(at, probe, fault.orElse(Fault.WIRING));
    }
    return Reading.emf(at, probe, result * chip.stepMv(), coldJunctionC.getAsDouble());
  }
}
