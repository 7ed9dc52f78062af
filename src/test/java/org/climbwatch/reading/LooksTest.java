package org.climbwatch.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LooksTest {
  private static final Moment AT = new Moment(2, 5000);
  private static final Moment EARLIER = new Moment(2, 4500);

  @Test
  void noLookIsNoReading() {
    assertThat(Looks.middle(AT, List.of())).isEmpty();
  }

  @Test
  void aSingleLookIsItselfAtTheMomentAskedFor() {
    assertThat(middle(emf(40, 25))).isEqualTo(Reading.emf(AT, "upper", 40, 25));
    assertThat(middle(faulty(Fault.WIRING))).isEqualTo(Reading.faulty(AT, "upper", Fault.WIRING));
  }

  /** The wild look is left with no say, whatever the other one of its pair is. */
  @Test
  void signalAndColdJunctionEachHaveTheirOwnMiddle() {
    Reading middle =
        middle(emf(40.1, 90), emf(40.2, 25.1), emf(77, 25.2), emf(40.3, 25.3), emf(-9, 25));

    assertThat(middle).isEqualTo(Reading.emf(AT, "upper", 40.2, 25.2, 5, 0.1483));
  }

  @Test
  void ofAnEvenNumberTheMiddleLiesBetweenTheTwo() {
    assertThat(middle(emf(40, 25), emf(41, 26), emf(42, 27), emf(43, 28)))
        .isEqualTo(Reading.emf(AT, "upper", 41.5, 26.5, 4, 1.4826));
  }

  @Test
  void temperaturesOfAnInstrumentHaveTheSame() {
    assertThat(middle(hot(1000, 25), hot(1002, 24), hot(1001, 26)))
        .isEqualTo(Reading.linearised(AT, "upper", 1001, OptionalDouble.of(25), 3, 1.483));
  }

  @Test
  void aFewFaultsAmongGoodLooksAreLeftOutAndNotCounted() {
    assertThat(
            middle(
                faulty(Fault.OPEN_CIRCUIT),
                emf(40, 25),
                emf(40, 25),
                faulty(Fault.WIRING),
                emf(40, 25)))
        .isEqualTo(Reading.emf(AT, "upper", 40, 25, 3, 0));
  }

  @Test
  void moreFaultsThanGoodLooksAreTheMostFrequentFault() {
    assertThat(
            middle(
                faulty(Fault.OPEN_CIRCUIT),
                faulty(Fault.OPEN_CIRCUIT),
                emf(40, 25),
                faulty(Fault.WIRING)))
        .isEqualTo(Reading.faulty(AT, "upper", Fault.OPEN_CIRCUIT));
  }

  @Test
  void ofFaultsAsFrequentTheNewestCounts() {
    assertThat(middle(faulty(Fault.OPEN_CIRCUIT), faulty(Fault.WIRING)))
        .isEqualTo(Reading.faulty(AT, "upper", Fault.WIRING));
    assertThat(middle(faulty(Fault.WIRING), faulty(Fault.OPEN_CIRCUIT)))
        .isEqualTo(Reading.faulty(AT, "upper", Fault.OPEN_CIRCUIT));
  }

  @Test
  void whereFaultsAndGoodLooksAreEvenTheNewestDecides() {
    assertThat(middle(emf(40, 25), faulty(Fault.OPEN_CIRCUIT)))
        .isEqualTo(Reading.faulty(AT, "upper", Fault.OPEN_CIRCUIT));
    assertThat(middle(faulty(Fault.OPEN_CIRCUIT), emf(40, 25)))
        .isEqualTo(Reading.emf(AT, "upper", 40, 25));
  }

  @Test
  void aDeviceThatChangesFromSignalsToTemperaturesIsTakenAtItsMoreFrequentWord() {
    assertThat(middle(emf(40, 25), hot(1000, 25), hot(1000, 25)))
        .isEqualTo(Reading.linearised(AT, "upper", 1000, OptionalDouble.of(25), 2, 0));
    assertThat(middle(emf(40, 25), hot(1000, 25)))
        .isEqualTo(Reading.linearised(AT, "upper", 1000, OptionalDouble.of(25)));
  }

  @Test
  void aLookThatIsItselfAMiddleStaysWhatItIsWhenAlone() {
    Reading reduced = Reading.emf(EARLIER, "upper", 40, 25, 16, 0.002);

    assertThat(middle(reduced)).isEqualTo(Reading.emf(AT, "upper", 40, 25, 16, 0.002));
  }

  /**
   * Against the standard deviation that the noise was made with; at so many looks the spread's own
   * error is 1.17 / sqrt(n) of it (Rousseeuw and Croux 1993, table 2: efficiency 36.74 %).
   */
  @Test
  void theSpreadIsTheStandardDeviationOfNormalNoise() {
    Random noise = new Random(574);
    Reading[] looks = new Reading[100_000];
    Arrays.setAll(looks, i -> emf(40 + 0.05 * noise.nextGaussian(), 25));

    Reading.Emf middle = (Reading.Emf) middle(looks);

    assertThat(middle.spreadMv()).isCloseTo(0.05, within(0.0006));
    assertThat(middle.emfMv()).isCloseTo(40, within(0.0008));
  }

  private static Reading middle(Reading... looks) {
    return Looks.middle(AT, new ArrayList<>(Arrays.asList(looks))).orElseThrow();
  }

  private static Reading emf(double emfMv, double coldJunctionC) {
    return Reading.emf(EARLIER, "upper", emfMv, coldJunctionC);
  }

  private static Reading hot(double temperatureC, double coldJunctionC) {
    return Reading.linearised(EARLIER, "upper", temperatureC, OptionalDouble.of(coldJunctionC));
  }

  private static Reading faulty(Fault fault) {
    return Reading.faulty(EARLIER, "upper", fault);
  }
}
