package org.climbwatch.source.spi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;

class StandstillTest {
  private static final Chip MAX31855 = new Max31855(ThermocoupleType.K);
  private static final Chip MAX31856 =
      new Max31856(ThermocoupleType.K, Max31856.Mode.TEMPERATURE, 1, 50, false, 0);

  private static final Reading HOT = Reading.emf(new Moment(0, 0), "top", 40, 25);
  private static final Reading COLD = Reading.emf(new Moment(0, 0), "top", 0.1, 25);

  @Test
  void aHotCoupleMayStandStillForMinutesAndAColdOneForAnHour() {
    assertThat(secondsUntilFault(MAX31855, HOT, 7200)).isEqualTo(600);
    assertThat(secondsUntilFault(MAX31855, COLD, 7200)).isEqualTo(3600);
    assertThat(secondsUntilFault(MAX31856, COLD, 7200)).isEqualTo(60);
  }

  /** Steps of 0.25 °C and no cold junction: an unlit kiln may keep its number for days. */
  @Test
  void aQuarterDegreeInAColdRoomIsNeverJudged() {
    Reading cold = own(18.25);

    assertThat(secondsUntilFault(new Max6675(25), cold, 200_000)).isEqualTo(-1);
    assertThat(secondsUntilFault(new Max6675(25), own(900), 200_000)).isEqualTo(900);
  }

  @Test
  void fewLooksAreNoProofHoweverFarApart() {
    Standstill standstill = new Standstill(MAX31856);
    for (int look = 0; look < Standstill.LEAST_ALIKE; look++) {
      assertThat(standstill.standsStill(HOT, look * 3_600_000_000_000L)).isFalse();
    }
  }

  @Test
  void theLeastChangeAndAnyFaultBeginItAnew() {
    Standstill standstill = new Standstill(MAX31855);
    Reading moved = Reading.emf(new Moment(0, 0), "top", 40, 25.0625);
    Reading fault = Reading.faulty(new Moment(0, 0), "top", Fault.OPEN_CIRCUIT);
    for (int second = 0; second < 5000; second++) {
      Reading reading = second % 500 == 0 ? moved : second % 499 == 0 ? fault : HOT;
      assertThat(standstill.standsStill(reading, second * 1_000_000_000L)).isFalse();
    }
  }

  /** A live MAX31855 in a hold: noise of one step now and then, as its steps of 10 µV have it. */
  @Test
  void aSignalThatMovesByAStepEachFewMinutesIsBelieved() {
    Standstill standstill = new Standstill(MAX31855);
    for (int second = 0; second < 20_000; second++) {
      Reading reading =
          Reading.emf(new Moment(0, second), "top", 40 + second / 300 % 2 * 0.0103, 25);
      assertThat(standstill.standsStill(reading, second * 1_000_000_000L)).isFalse();
    }
  }

  private static Reading own(double celsius) {
    return Reading.linearised(new Moment(0, 0), "top", celsius, OptionalDouble.empty());
  }

  private static int secondsUntilFault(Chip chip, Reading reading, int most) {
    Standstill standstill = new Standstill(chip);
    for (int second = 0; second < most; second++) {
      if (standstill.standsStill(reading, second * 1_000_000_000L)) {
        return second;
      }
    }
    return -1;
  }
}
