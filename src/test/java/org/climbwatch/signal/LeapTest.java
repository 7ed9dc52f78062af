package org.climbwatch.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LeapTest {
  private final Leap leap = new Leap();
  private long millis;

  private LeapTest reads(double... celsius) {
    for (double one : celsius) {
      leap.add(millis, one, OptionalDouble.of(25), 0.3);
      millis += 1000;
    }
    return this;
  }

  @Test
  void threeReadingsOnAnotherLevelAreALeap() {
    reads(800, 800, 800, 25, 25);
    assertThat(leap.awayC()).isEmpty();
    assertThat(leap.unsure()).isTrue();

    reads(25);
    assertThat(leap.awayC()).hasValue(-775);
    assertThat(leap.unsure()).isFalse();
  }

  @Test
  void sparksAreNone() {
    reads(800, 800, 800, 25, 800, 900, 700, 800, 500, 480, 800);

    assertThat(leap.awayC()).isEmpty();
    assertThat(leap.unsure()).isFalse();
  }

  @Test
  void aSparkAtTheVeryFirstIsNone() {
    reads(60, 14, 14, 14, 14);

    assertThat(leap.awayC()).isEmpty();
  }

  @Test
  void aBareCoupleInAFireThatIsShutIsNone() {
    // 5 °C/s: NIST gas-burner data, shared facts
    reads(800, 800, 800, 795, 790, 785, 780, 775, 770, 765, 760, 755, 750, 750, 750, 750);

    assertThat(leap.awayC()).isEmpty();
  }

  /** A first-order lag; 1.5 s is a bare wire in moving air, 30 s a heavy sheath. */
  @ParameterizedTest
  @CsvSource({"1.5,1", "5,1", "15,1", "1.5,2", "10,2", "2,5", "20,5", "2,10", "5,10", "30,10"})
  void aCoupleThatFollowsAnOpenedDoorIsNone(double lagS, int intervalS) {
    for (double depthC : new double[] {50, 150, 400, 950}) {
      LeapTest of = new LeapTest();
      of.follows(980, 980, 30, lagS, intervalS);
      of.follows(980, 980 - depthC, 600, lagS, intervalS);
      of.follows(980 - depthC, 985, 600, lagS, intervalS);
    }
  }

  private void follows(double fromC, double toC, int seconds, double lagS, int intervalS) {
    for (int s = intervalS; s <= seconds; s += intervalS) {
      double noiseC = 0.3 * StrictMath.sin(s * (double) s % 9973 * 7.77);
      leap.add(
          millis,
          toC + (fromC - toC) * StrictMath.exp(-s / lagS) + noiseC,
          OptionalDouble.of(25),
          0.3);
      millis += intervalS * 1000L;
      assertThat(leap.awayC()).as("%s s of lag, %s to %s", lagS, fromC, toC).isEmpty();
    }
  }

  /** Opened, shut after 5 s because it is hot, opened again 4 s later. */
  @ParameterizedTest
  @CsvSource({"2,1", "3,1", "5,1", "3,2", "5,2"})
  void aDoorThatIsOpenedInTwoGoesIsNone(double lagS, int intervalS) {
    for (double depthC : new double[] {150, 300, 500}) {
      for (double phaseS = 0; phaseS < intervalS; phaseS += 0.25) {
        assertThat(awayBehind(doorInTwoGoes(depthC, lagS), intervalS, phaseS, 0.3))
            .as("%s °C, %s s of lag, %s s", depthC, lagS, phaseS)
            .isFalse();
      }
    }
  }

  /** A fire that shivers by 2 °C hides the end of a bare couple's tail. */
  @ParameterizedTest
  @CsvSource({"1.0,2", "1.5,2", "2,2", "1.5,1"})
  void aFireThatShiversMakesNoLeapOfAnOpenedDoor(double lagS, int intervalS) {
    for (double depthC : new double[] {150, 300, 500}) {
      for (double phaseS = 0; phaseS < intervalS; phaseS += 0.25) {
        DoubleUnaryOperator opened =
            s -> s < 0 ? 980 : 980 - depthC * (1 - StrictMath.exp(-s / lagS));
        assertThat(awayBehind(opened, intervalS, phaseS, 2))
            .as("%s °C, %s s of lag, %s s", depthC, lagS, phaseS)
            .isFalse();
      }
    }
  }

  private static DoubleUnaryOperator doorInTwoGoes(double depthC, double lagS) {
    return at -> {
      double celsius = 980;
      for (double s = 0; s < at; s += 0.01) {
        double doorC = s < 5 || s >= 9 ? 980 - depthC : 980;
        celsius += (doorC - celsius) * 0.01 / lagS;
      }
      return celsius;
    };
  }

  private static boolean awayBehind(
      DoubleUnaryOperator celsius, int intervalS, double phaseS, double noiseC) {
    Leap of = new Leap();
    for (int s = -20; s < 60; s += intervalS) {
      double noise = noiseC * StrictMath.sin(s * (double) s % 9973 * 7.77);
      long millis = (s + 20) * 1000L;
      of.add(millis, celsius.applyAsDouble(s + phaseS) + noise, OptionalDouble.of(25), noiseC);
    }
    return of.awayC().isPresent();
  }

  @Test
  void oneReadingBetweenIsNoCouplesOnAnyLevel() {
    reads(800, 800, 800, 600, 400, 400, 400);

    assertThat(leap.awayC()).hasValue(-400);
  }

  @Test
  void behindALookWithoutATemperatureItIsALeapOnAnyLevel() {
    reads(800, 800, 800);
    leap.fault();
    millis += 9_000;
    reads(400, 400, 400);

    assertThat(leap.awayC()).hasValue(-400);
  }

  @Test
  void behindAGapItIsALeapOnAnyLevel() {
    reads(800, 800, 800);
    leap.gap();
    millis += 59_000;
    reads(400, 400, 400);

    assertThat(leap.awayC()).hasValue(-400);
  }

  @Test
  void timeWithoutATemperatureMakesNoLevelRight() {
    reads(800, 800, 800, 25);
    leap.fault();
    millis += 70_000;
    reads(25, 25);

    assertThat(leap.awayC()).isPresent();
  }

  /** An hour without a temperature: a light kiln cools so far, a fast one climbs so far. */
  @ParameterizedTest
  @CsvSource({"310,false", "250,true", "1350,false", "1500,true"})
  void whatAKilnMayHaveDoneMeanwhileIsNone(double levelC, boolean leap) {
    reads(800, 800, 800);
    this.leap.fault();
    millis += 3_600_000;
    reads(levelC, levelC, levelC);

    assertThat(this.leap.awayC().isPresent()).isEqualTo(leap);
  }

  @Test
  void behindMissedReadingsItIsALeapOnAnyLevel() {
    reads(800, 800, 800);
    millis += 29_000;
    reads(400, 400, 400);

    assertThat(leap.awayC()).hasValue(-400);
  }

  /** A couple that was drawn out and put back, an amplifier's filter. */
  @ParameterizedTest
  @CsvSource({"60,true", "110,true", "130,false", "3600,false"})
  void whatCreepsBackNearItsLevelIsBackWithinTwoMinutes(int seconds, boolean back) {
    reads(800, 800, 800, 25, 25, 25);
    for (int s = 3; s < seconds - 10; s++) {
      reads(25);
    }
    reads(200, 350, 480, 590, 680, 740, 780, 800, 800, 800);

    assertThat(leap.awayC().isEmpty()).isEqualTo(back);
  }

  @Test
  void lessThanHalfTheWayIsNotBack() {
    reads(800, 800, 800, 25, 25, 25, 300, 300, 300);

    assertThat(leap.awayC()).hasValue(-775);
  }

  @Test
  void theTwoMinutesAreCountedAnewByAnotherClock() {
    millis = 10_000_000;
    reads(800, 800, 800, 25, 25, 25);
    leap.resume();
    millis = 20_000;
    for (int s = 0; s < 200; s++) {
      reads(25);
    }
    reads(200, 350, 480, 590, 680, 740, 780, 800, 800, 800);

    assertThat(leap.awayC()).isPresent();
  }

  @Test
  void itIsBackWhenItWasMendedWhileTheMachineWasOff() {
    reads(800, 800, 800, 25, 25, 25);
    leap.resume();
    reads(700, 700, 700);

    assertThat(leap.awayC()).isEmpty();
  }

  @Test
  void oneReadingBetweenIsNoCouplesTwoSecondsApart() {
    for (double celsius : new double[] {800, 800, 800, 400, 25, 25, 25}) {
      leap.add(millis, celsius, OptionalDouble.of(25), 0.3);
      millis += 2000;
    }

    assertThat(leap.awayC()).isPresent();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 10})
  void aShortedLeadIsALeapHoweverSlowTheReadings(int intervalS) {
    for (int i = 0; i < 20; i++) {
      leap.add(millis, i < 10 ? 800 : 26, OptionalDouble.of(25), 0.3);
      millis += intervalS * 1000L;
    }

    assertThat(leap.awayC()).isPresent();
  }

  @Test
  void aContactThatChattersOnTheWayIsALeap() {
    reads(800, 800, 800, 400, 650, 200, 25, 25, 25);

    assertThat(leap.awayC()).isPresent();
  }

  @Test
  void aSlowReaderMayMoveFurtherFromOneReadingToTheNext() {
    for (double celsius : new double[] {800, 800, 800, 725, 720, 718, 717}) {
      leap.add(millis, celsius, OptionalDouble.of(25), 0.3);
      millis += 10_000;
    }

    assertThat(leap.awayC()).isEmpty();
  }

  @Test
  void aNoisySignalMakesNoLeapOfItsNoise() {
    for (double celsius : new double[] {800, 801, 800, 840, 840, 840, 800, 800}) {
      leap.add(millis, celsius, OptionalDouble.of(25), 6);
      millis += 1000;
      assertThat(leap.awayC()).isEmpty();
    }
  }

  @Test
  void itIsBackNearTheLevelThatItLeft() {
    reads(800, 800, 800, 25, 25, 25, 26, 810, 810, 810);

    assertThat(leap.awayC()).isEmpty();
  }

  @Test
  void itIsBackWhenTheKilnHasGoneOnMeanwhile() {
    reads(500, 500, 500, 25, 25, 25);
    millis += 3_600_000;
    reads(25, 25, 25, 1100, 1100, 1100);

    assertThat(leap.awayC()).isEmpty();
  }

  @Test
  void aSecondLeapTheSameWayIsNotBack() {
    reads(800, 800, 800, 500, 500, 500, 25, 25, 25);

    assertThat(leap.awayC()).hasValue(-300);
  }

  @Test
  void itIsBackByTheWordOfThePotter() {
    reads(800, 800, 800, 25, 25, 25);
    leap.trust();
    reads(25, 25, 25, 25);

    assertThat(leap.awayC()).isEmpty();
  }

  @Test
  void aMinuteWithoutAnyLevelIsTakenForTheKilnAgain() {
    reads(800, 800, 800);
    for (int i = 0; i < 40; i++) {
      reads(300, 500);
    }
    assertThat(leap.awayC()).isEmpty();
    reads(400);

    assertThat(leap.awayC()).isEmpty();
  }
}
