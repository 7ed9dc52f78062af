package org.climbwatch.source.simulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SimulatedSourceTest {
  private static final int HOUR = 3600;

  @ParameterizedTest
  @EnumSource(FiringKind.class)
  void theSameSeedGivesTheSameReadingsBitForBit(FiringKind firing) {
    assertThat(readings(source(firing, 5, FaultKind.NONE), 0, 2 * HOUR, 7))
        .isEqualTo(readings(source(firing, 5, FaultKind.NONE), 0, 2 * HOUR, 7));
  }

  @Test
  void anotherSeedGivesOtherReadings() {
    List<Reading> one = readings(source(FiringKind.STONEWARE, 1, FaultKind.NONE), 0, 600, 1);
    List<Reading> other = readings(source(FiringKind.STONEWARE, 2, FaultKind.NONE), 0, 600, 1);

    assertThat(one).isNotEqualTo(other);
  }

  @Test
  void aReadingDoesNotDependOnWhichOthersWereAskedFor() {
    SimulatedSource often = source(FiringKind.DEMO, 3, FaultKind.NONE);
    SimulatedSource seldom = source(FiringKind.DEMO, 3, FaultKind.NONE);
    SimulatedSource backwards = source(FiringKind.DEMO, 3, FaultKind.NONE);
    readings(often, 0, 1800, 1);
    backwards.read(at(9000_000));

    Moment moment = at(1800_300);
    Reading reading = often.read(moment).orElseThrow();

    assertThat(seldom.read(moment)).contains(reading);
    assertThat(backwards.read(moment)).contains(reading);
  }

  @Test
  void tenReadingsASecondCarryTheirOwnNoise() {
    SimulatedSource source = source(FiringKind.STONEWARE, 4, FaultKind.NONE);
    List<Double> emfs = new ArrayList<>();
    for (int tick = 0; tick < 200; tick++) {
      emfs.add(emf(source.read(at(5 * HOUR * 1000L + tick * 100)).orElseThrow()));
    }

    assertThat(emfs.stream().distinct().count()).isGreaterThan(5);
  }

  @Test
  void theSignalComesInTheAmplifiersSteps() {
    SimulatedSource source = source(FiringKind.STONEWARE, 4, FaultKind.NONE);

    for (Reading reading : readings(source, 0, HOUR, 13)) {
      Reading.Emf emf = (Reading.Emf) reading;
      // a quarter degree at 41.276 µV/°C and a sixteenth: MAX31855 data sheet 19-5793
      assertThat(distanceFromStep(emf.emfMv(), 0.041276 / 4)).isLessThan(6e-5);
      assertThat(distanceFromStep(emf.coldJunctionC(), 0.0625)).isLessThan(6e-4);
    }
  }

  @Test
  void theReadingFollowsTheTrueTemperatureWithinAKilnsNoise() {
    SimulatedSource source = source(FiringKind.STONEWARE, 8, FaultKind.NONE);
    double squares = 0;
    int count = 0;
    for (long s = HOUR; s < 9 * HOUR; s += 11) {
      double readC = celsius(source.read(at(s * 1000)).orElseThrow());
      double off = readC - source.trueC();
      if (Math.abs(off) < 8) {
        squares += off * off;
        count++;
      }
    }

    // sheathed couples in gas-burner room fires: 0.4 to 1.4 °C; kilns are calmer (facts, section 8)
    assertThat(Math.sqrt(squares / count)).isBetween(0.1, 0.8);
    assertThat(count).isGreaterThan(8 * HOUR / 11 - 20);
  }

  @Test
  void theColdJunctionWarmsSlowlyFromThatOfTheShedTowardsThirty() {
    SimulatedSource source = source(FiringKind.STONEWARE, 8, FaultKind.NONE);

    double before = coldJunction(source.read(at(0)).orElseThrow());
    double after = coldJunction(source.read(at(9L * HOUR * 1000)).orElseThrow());

    assertThat(before).isCloseTo(14, within(1.0));
    assertThat(after).isBetween(24.0, 31.0);
  }

  @Test
  void aStonewareFiringReachesConeNineInNineHoursAndComesDownAgain() {
    SimulatedSource source = source(FiringKind.STONEWARE, 1, FaultKind.NONE);

    // climbs of section 1 of the facts: glaze on bisque 100 to 600 °C, 30 to 80 at the end
    assertThat(trueC(source, 60)).isBetween(80.0, 160.0);
    assertThat(climb(source, 150, 210)).isBetween(100.0, 300.0);
    double beforeReduction = climb(source, 300, 328);
    double inReduction = climb(source, 335, 365);
    assertThat(inReduction).isLessThan(0.75 * beforeReduction).isGreaterThan(20);
    assertThat(climb(source, 500, 540)).isBetween(30.0, 90.0);
    assertThat(trueC(source, 544)).isBetween(1255.0, 1290.0);
    assertThat(climb(source, 550, 610)).isBetween(-500.0, -200.0);
    assertThat(trueC(source, 20 * 60)).isLessThan(40);
  }

  @Test
  void fastWorkReachesAThousandDegreesInAnHourAndAHalf() {
    SimulatedSource source = source(FiringKind.FAST_REDUCTION, 1, FaultKind.NONE);

    assertThat(trueC(source, 94)).isBetween(970.0, 1060.0);
    assertThat(climb(source, 20, 60)).isBetween(400.0, 1000.0);
  }

  @Test
  void afterOneFiringTheKilnIsLitAgainFromWhereItIs() {
    SimulatedSource source = source(FiringKind.FAST_REDUCTION, 1, FaultKind.OPEN_CIRCUIT);
    long cycle = FiringKind.FAST_REDUCTION.cycle().toSeconds();
    double before = trueCAtSecond(source, cycle - 2);
    double after = trueCAtSecond(source, cycle + 2);

    assertThat(after).isCloseTo(before, Offset.offset(0.5));
    assertThat(trueCAtSecond(source, cycle + 90 * 60)).isGreaterThan(950);
    assertThat(source.read(at((cycle + 91 * 60) * 1000)).orElseThrow())
        .as("nothing goes wrong in a later round")
        .isInstanceOf(Reading.Emf.class);
  }

  /** What was stuck once stayed so in all rounds, and a couple that had rotted stayed rotten. */
  @ParameterizedTest
  @EnumSource(
      value = FaultKind.class,
      names = {"STUCK", "DRIFT"})
  void aProbeOfALaterRoundIsAHealthyOne(FaultKind fault) {
    SimulatedSource source = source(FiringKind.FAST_REDUCTION, 1, fault);
    long second = FiringKind.FAST_REDUCTION.cycle().toSeconds() + 90 * 60;

    double readC = celsius(source.read(at(second * 1000)).orElseThrow());

    assertThat(source.trueC()).isGreaterThan(950);
    assertThat(readC).isCloseTo(source.trueC(), within(8.0));
  }

  @Test
  void aWeekAheadIsCaughtUpWith() {
    SimulatedSource source = source(FiringKind.DEMO, 1, FaultKind.NONE);

    assertThat(source.read(at(Duration.ofDays(7).toMillis()))).isPresent();
  }

  @Test
  void beforeItsOriginTheKilnStandsStill() {
    SimulatedSource source =
        new SimulatedSource(
            "upper", new SimulationSettings(FiringKind.STONEWARE, 1, FaultKind.NONE), 60_000);

    Reading early = source.read(at(0)).orElseThrow();

    assertThat(celsius(early)).isCloseTo(14, within(2.0));
    assertThat(early.at()).isEqualTo(at(0));
    assertThat(early.probe()).isEqualTo("upper");
  }

  @Test
  void silenceAndWiringFaultsAreReadingsWithoutATemperature() {
    assertThat(faultAtEnd(FaultKind.SILENCE)).isEqualTo(Fault.NO_ANSWER);
    assertThat(faultAtEnd(FaultKind.OPEN_CIRCUIT)).isEqualTo(Fault.OPEN_CIRCUIT);
    assertThat(faultAtEnd(FaultKind.SHORT_TO_GROUND)).isEqualTo(Fault.SHORT_TO_GROUND);
  }

  @Test
  void aFaultBeginsAtAMomentThatTheSeedChooses() {
    assertThat(firstFault(1)).isNotEqualTo(firstFault(2)).isEqualTo(firstFault(1));
    assertThat(firstFault(1)).isBetween(4L * HOUR, 7L * HOUR);
  }

  @Test
  void aCoupleWiredTheWrongWayRoundReadsBelowTheShedAsTheKilnHeats() {
    SimulatedSource source = source(FiringKind.STONEWARE, 1, FaultKind.REVERSED);

    Reading later = source.read(at(60 * 60_000L)).orElseThrow();

    assertThat(emf(later)).isNegative();
    assertThat(celsius(later)).isLessThan(0);
  }

  @Test
  void aNoisyProbeJumpsByTensOfDegrees() {
    SimulatedSource source = source(FiringKind.STONEWARE, 1, FaultKind.PROBE_NOISE);
    int jumps = 0;
    double before = celsius(source.read(at(8L * HOUR * 1000)).orElseThrow());
    for (int s = 1; s < 100; s++) {
      double now = celsius(source.read(at((8L * HOUR + s) * 1000)).orElseThrow());
      jumps += Math.abs(now - before) > 20 ? 1 : 0;
      before = now;
    }

    assertThat(jumps).isGreaterThan(40);
  }

  @Test
  void theIgniterThrowsSingleReadingsOffWhileItClicks() {
    int offInIgnition = 0;
    int offBefore = 0;
    for (long seed = 0; seed < 40; seed++) {
      SimulatedSource source = source(FiringKind.STONEWARE, seed, FaultKind.NONE);
      offBefore += Math.abs(celsius(source.read(at(1000)).orElseThrow()) - 14) > 10 ? 1 : 0;
      for (int s = 5; s < 19; s++) {
        double readC = celsius(source.read(at(s * 1000L)).orElseThrow());
        offInIgnition += Math.abs(readC - source.trueC()) > 10 ? 1 : 0;
      }
    }

    assertThat(offBefore).isZero();
    assertThat(offInIgnition).isBetween(20, 120);
  }

  /** Asked twice a second, looks of neighbouring readings are shared. */
  @Test
  void aReadingOfSeveralLooksDoesNotDependOnWhichOthersWereAskedFor() {
    SimulationSettings settings =
        new SimulationSettings(FiringKind.STONEWARE, 4, FaultKind.NONE, Place.UPPER, 10);
    SimulatedSource often = new SimulatedSource("upper", settings, 0);
    SimulatedSource once = new SimulatedSource("upper", settings, 0);
    Optional<Reading> last = Optional.empty();
    for (long millis = 0; millis <= 61_700; millis += 100) {
      last = often.read(new Moment(0, millis));
    }

    assertThat(once.read(new Moment(0, 61_700))).isEqualTo(last);
    Reading.Emf reading = (Reading.Emf) last.orElseThrow();
    assertThat(reading.samples()).isEqualTo(10);
    assertThat(reading.spreadMv()).isBetween(0.0, 0.1);
  }

  @Test
  void wordsAreTheContractsAndOthersAreRefusedWithThem() {
    assertThat(FaultKind.ofWord("burner_out")).isEqualTo(FaultKind.BURNER_OUT);
    assertThat(FiringKind.ofWord("fast_reduction")).isEqualTo(FiringKind.FAST_REDUCTION);
    assertThatThrownBy(() -> FaultKind.ofWord("explosion"))
        .hasMessage(
            "unknown fault \"explosion\"; allowed: none, stall, burner_out, runaway, open_circuit,"
                + " short_to_ground, probe_noise, sparks, silence, reversed, reversed_twice,"
                + " short_to_supply, stuck, jumps, hot_box, box_draught, drift, hum");
    assertThatThrownBy(() -> FiringKind.ofWord("salt"))
        .hasMessage("unknown firing \"salt\"; allowed: stoneware, fast_reduction, demo");
  }

  private static Fault faultAtEnd(FaultKind fault) {
    Reading last = source(FiringKind.STONEWARE, 1, fault).read(at(9L * HOUR * 1000)).orElseThrow();
    return ((Reading.Faulty) last).fault();
  }

  private static long firstFault(long seed) {
    SimulatedSource source = source(FiringKind.STONEWARE, seed, FaultKind.OPEN_CIRCUIT);
    long second = 0;
    while (source.read(at(second * 1000)).orElseThrow() instanceof Reading.Emf) {
      second++;
    }
    return second;
  }

  private static SimulatedSource source(FiringKind firing, long seed, FaultKind fault) {
    return new SimulatedSource("upper", new SimulationSettings(firing, seed, fault), 0);
  }

  private static List<Reading> readings(SimulatedSource source, long from, long to, long step) {
    List<Reading> all = new ArrayList<>();
    for (long second = from; second < to; second += step) {
      all.add(source.read(at(second * 1000)).orElseThrow());
    }
    return all;
  }

  private static double trueC(SimulatedSource source, long minute) {
    return trueCAtSecond(source, minute * 60);
  }

  private static double trueCAtSecond(SimulatedSource source, long second) {
    source.read(at(second * 1000));
    return source.trueC();
  }

  private static double climb(SimulatedSource source, long fromMinute, long toMinute) {
    double from = trueC(source, fromMinute);
    return (trueC(source, toMinute) - from) * 60 / (toMinute - fromMinute);
  }

  private static double distanceFromStep(double value, double step) {
    return Math.abs(value - Math.rint(value / step) * step);
  }

  private static double emf(Reading reading) {
    return ((Reading.Emf) reading).emfMv();
  }

  private static double coldJunction(Reading reading) {
    return ((Reading.Emf) reading).coldJunctionC();
  }

  private static double celsius(Reading reading) {
    return ColdJunction.hotJunctionC(ThermocoupleType.K, emf(reading), coldJunction(reading));
  }

  private static Moment at(long millis) {
    return new Moment(0, millis);
  }
}
