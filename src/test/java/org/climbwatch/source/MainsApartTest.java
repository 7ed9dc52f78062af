package org.climbwatch.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.climbwatch.reading.Looks;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MainsApartTest {
  /** 1 s / 0.1 s, 0.143 s of a MAX31856, 0.22 s of a MAX6675 (their data sheets). */
  @ParameterizedTest
  @ValueSource(ints = {10, 20, 50, 100, 101, 125, 143, 200, 220, 1000})
  void theLooksGoRoundTheCycleOfBothMainsAndComeHardlyLater(int millis) {
    long pace = MainsApart.pace(Duration.ofMillis(millis)).toMillis();

    assertThat(pace).isBetween((long) millis, millis + 4L);
    assertThat(turn(50, pace)).isBetween(0.0999, 0.9001);
    assertThat(turn(60, pace)).isBetween(0.0999, 0.9001);
  }

  /** At the chip's own tenth of a second the hum stands still and all of it is in the reading. */
  @ParameterizedTest
  @ValueSource(doubles = {50, 60})
  void aTenthOfASecondKeepsAllOfTheHumAndTheChosenPaceAThirdAtMost(double mainsHz) {
    long chosen = MainsApart.pace(Duration.ofMillis(100)).toMillis();

    assertThat(chosen).isEqualTo(102);
    assertThat(worst(mainsHz, 100)).isGreaterThan(0.99);
    assertThat(worst(mainsHz, chosen)).isLessThan(1 / 3.0);
  }

  @Test
  void noPaceIsEverFaster() {
    for (int millis = 1; millis < 500; millis++) {
      assertThat(MainsApart.pace(Duration.ofMillis(millis)).toMillis())
          .isBetween((long) millis, millis + 6L);
    }
  }

  /** Of hum of 1 mV, over all its phases: the largest error in the middle of a second's looks. */
  private static double worst(double mainsHz, long paceMillis) {
    double worst = 0;
    for (int phase = 0; phase < 360; phase++) {
      List<Reading> looks = new ArrayList<>();
      for (long millis = 0; millis < 1000; millis += paceMillis) {
        double cycles = mainsHz * millis / 1000 + phase / 360.0;
        looks.add(
            Reading.emf(new Moment(0, millis), "upper", 40 + Math.sin(2 * Math.PI * cycles), 25));
      }
      Reading.Emf middle = (Reading.Emf) Looks.middle(new Moment(0, 1000), looks).orElseThrow();
      worst = Math.max(worst, Math.abs(middle.emfMv() - 40));
    }
    return worst;
  }

  private static double turn(int mainsHz, long millis) {
    return mainsHz * millis / 1000.0 % 1;
  }
}
