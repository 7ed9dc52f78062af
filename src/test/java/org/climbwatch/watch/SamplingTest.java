package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.LongFunction;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Looks;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ColdJunction;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A kiln that climbs by 150 °C/h from 700 °C, looked at all the time, with what disturbs the looks;
 * one reading a second goes through the whole core.
 */
class SamplingTest {
  private static final double FROM_C = 700;
  private static final double CLIMB_C_PER_H = 150;
  private static final double COLD_C = 30;
  private static final int SECONDS = 900;

  /** So far apart when polled for a device that converts in a tenth of a second. */
  private static final long APART_MILLIS = 102;

  /** mV, some 5 °C at 41 µV/°C (Type K at 700 °C): a lead laid along a mains cable. */
  private static final double HUM_MV = 0.2;

  private final List<Judged> curve = new ArrayList<>();
  private final List<Event> events = new ArrayList<>();

  @ParameterizedTest
  @ValueSource(doubles = {50, 60, 49.95, 60.02})
  void mainsHumStaysOutOfCurveAndClimbAndShowsAsSpread(double mainsHz) {
    fire(
        APART_MILLIS,
        millis -> emf(millis, HUM_MV * Math.sin(2 * Math.PI * mainsHz * millis / 1000)));

    assertThat(worstC()).isLessThan(2);
    assertThat(last().climb().orElseThrow().cPerHour()).isCloseTo(CLIMB_C_PER_H, within(6.0));
    // a sine's median absolute deviation is its amplitude over the root of 2
    assertThat(last().spreadC().orElseThrow())
        .isCloseTo(HUM_MV / Math.sqrt(2) * 1.4826 / 0.041, within(2.2));
    assertThat(alarms())
        .as("the spread is the only finding, and nothing is judged differently for it")
        .singleElement()
        .satisfies(
            event -> {
              assertThat(event.subject()).isEqualTo("looks_scatter");
              assertThat(event.message()).contains("the looks scatter by", "Mains hum");
            });
  }

  /** Where the readings themselves shiver, that is said, and the scatter of the looks is not. */
  @Test
  void badContactThatShowsInTheReadingsIsOneFinding() {
    Random dice = new Random(61);

    fire(APART_MILLIS, millis -> emf(millis, dice.nextGaussian()));

    assertThat(alarms()).extracting(Event::subject).containsExactly("probe_noisy");
  }

  /** A quarter of a degree and the flutter of a flame. */
  @Test
  void healthyLooksGiveNoFinding() {
    Random dice = new Random(62);

    fire(APART_MILLIS, millis -> emf(millis, Math.rint(dice.nextGaussian() * 4) * 0.0103));

    assertThat(alarms()).isEmpty();
  }

  /** Why looks are not taken at the chip's own tenth of a second: the hum would stand still. */
  @ParameterizedTest
  @ValueSource(doubles = {50, 60})
  void atATenthOfASecondTheSameHumIsASteadyErrorThatNothingTells(double mainsHz) {
    fire(100, millis -> emf(millis, HUM_MV * Math.sin(2 * Math.PI * mainsHz * millis / 1000 + 1)));

    assertThat(worstC()).isGreaterThan(3.5);
    assertThat(last().spreadC().orElseThrow()).isLessThan(0.1);
  }

  /**
   * An igniter clicks for half a minute, four looks of each ten: two wild, two that the chip calls
   * open.
   */
  @Test
  void anIgnitersSparksMoveNothingLoseNothingAndRaiseNothing() {
    fire(APART_MILLIS, SamplingTest::withSparks);

    assertThat(curve).hasSize(SECONDS);
    assertThat(curve).allMatch(judged -> judged.fault().isEmpty() && !judged.spike());
    assertThat(worstC()).isLessThan(0.2);
    assertThat(last().climb().orElseThrow().cPerHour()).isCloseTo(CLIMB_C_PER_H, within(1.0));
    assertThat(alarms()).isEmpty();
  }

  @Test
  void theSameSparksReachASingleLookASecond() {
    fire(1000, SamplingTest::withSparks);

    assertThat(curve).anyMatch(judged -> judged.fault().isPresent() || judged.spike());
  }

  private static Reading withSparks(long millis) {
    boolean clicking = millis > 600_000 && millis < 630_000;
    int place = (int) (millis * 7 / 1000 % 10);
    if (clicking && place < 2) {
      return Reading.faulty(new Moment(0, millis), "upper", Fault.OPEN_CIRCUIT);
    }
    return emf(millis, clicking && place < 4 ? (place == 2 ? 8 : -25) : 0);
  }

  private static Reading emf(long millis, double disturbanceMv) {
    double emfMv = ColdJunction.emfMv(ThermocoupleType.K, trueC(millis), COLD_C);
    return Reading.emf(new Moment(0, millis), "upper", emfMv + disturbanceMv, COLD_C);
  }

  private static double trueC(long millis) {
    return FROM_C + CLIMB_C_PER_H * millis / 3.6e6;
  }

  private void fire(long apartMillis, LongFunction<Reading> look) {
    Watch watch = new Watch(Script.SETTINGS);
    watch.accept(new Input.Began(new Moment(0, 0), "tea bowls"));
    long next = 0;
    for (int second = 1; second <= SECONDS; second++) {
      List<Reading> looks = new ArrayList<>();
      for (; next <= second * 1000L; next += apartMillis) {
        looks.add(look.apply(next));
      }
      Reading reading = Looks.middle(new Moment(0, second * 1000L), looks).orElseThrow();
      Outcome outcome = watch.accept(new Input.Measured(reading));
      curve.add(outcome.judged().orElseThrow());
      events.addAll(outcome.events());
    }
  }

  private Judged last() {
    return curve.get(curve.size() - 1);
  }

  private double worstC() {
    return curve.stream()
        .filter(judged -> judged.temperatureC().isPresent())
        .mapToDouble(
            judged ->
                Math.abs(
                    judged.temperatureC().getAsDouble() - trueC(judged.reading().at().millis())))
        .max()
        .orElseThrow();
  }

  private List<Event> alarms() {
    return events.stream().filter(event -> event instanceof Event.AlarmChanged).toList();
  }
}
