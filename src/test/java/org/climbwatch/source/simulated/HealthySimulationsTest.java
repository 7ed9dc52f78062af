package org.climbwatch.source.simulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Findings about a probe come when something is wrong with it, and only then. */
class HealthySimulationsTest {
  private static final List<AlarmKind> FINDINGS =
      List.of(
          AlarmKind.PROBE_REVERSED,
          AlarmKind.PROBE_STUCK,
          AlarmKind.PROBE_NOISY,
          AlarmKind.LOOKS_SCATTER,
          AlarmKind.PROBE_JUMPS,
          AlarmKind.COLD_KILN_DISAGREES,
          AlarmKind.COLD_JUNCTION_HOT,
          AlarmKind.COLD_JUNCTION_UNSTEADY,
          AlarmKind.PROBE_FAULT,
          AlarmKind.READINGS_STOPPED);

  private static final WatchSettings SETTINGS =
      new WatchSettings(
          "top hat",
          OptionalDouble.empty(),
          new ProbeSettings("upper", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1),
          SignalSettings.DEFAULT,
          FiringSettings.DEFAULT,
          AlarmSettings.DEFAULT);

  private Watch watch = new Watch(SETTINGS);
  private final List<Event.AlarmChanged> raised = new ArrayList<>();

  /** Ten of each kind of firing, from cold to cold. */
  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void healthyFiringGivesNoFinding(long seed) {
    for (FiringKind firing : List.of(FiringKind.STONEWARE, FiringKind.FAST_REDUCTION)) {
      play(new SimulationSettings(firing, seed, FaultKind.NONE), 5);

      assertThat(raised).extracting(Event.AlarmChanged::kind).doesNotContainAnyElementsOf(FINDINGS);
    }
  }

  /** The same with ten looks in each reading, as a device gives that is asked all the time. */
  @ParameterizedTest
  @ValueSource(longs = {21, 22})
  void healthyFiringOfSeveralLooksGivesNoFinding(long seed) {
    play(
        new SimulationSettings(FiringKind.FAST_REDUCTION, seed, FaultKind.NONE, Place.UPPER, 10),
        5);

    assertThat(raised).extracting(Event.AlarmChanged::kind).doesNotContainAnyElementsOf(FINDINGS);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void noisyProbeIsOneFindingAndNoFlood(long seed) {
    play(new SimulationSettings(FiringKind.STONEWARE, seed, FaultKind.PROBE_NOISE), 1);

    assertThat(raised)
        .extracting(Event.AlarmChanged::kind)
        .containsOnlyOnce(AlarmKind.PROBE_NOISY)
        .doesNotContain(AlarmKind.CLIMB_TOO_FAST, AlarmKind.CLIMB_STALLED, AlarmKind.PROBE_JUMPS)
        .isSubsetOf(AlarmKind.PROBE_NOISY, AlarmKind.FALLING, AlarmKind.SAFE_TO_OPEN);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void looseScrewIsOneFindingAndNoFlood(long seed) {
    play(new SimulationSettings(FiringKind.STONEWARE, seed, FaultKind.JUMPS), 1);

    assertThat(raised)
        .extracting(Event.AlarmChanged::kind)
        .containsOnlyOnce(AlarmKind.PROBE_JUMPS)
        .isSubsetOf(AlarmKind.PROBE_JUMPS, AlarmKind.SAFE_TO_OPEN);
  }

  /** The readings of a kiln whose flame goes out, with noise laid over them from minute 200 on. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void lostFlameIsAnnouncedThroughNoise(long seed) {
    SimulationSettings out =
        new SimulationSettings(FiringKind.STONEWARE, seed, FaultKind.BURNER_OUT);
    SimulatedSource source = new SimulatedSource("upper", out, 0);
    long outAtS = -1;
    for (long second = 0; second < 25_000; second++) {
      Moment at = new Moment(0, second * 1000);
      source.read(at);
      double trueC = source.trueC();
      double noiseC = second < 12_000 ? 0.3 : 12;
      double seenC = trueC + noiseC * Hash.normal(seed, 99, second);
      put(new Input.Measured(Reading.linearised(at, "upper", seenC, OptionalDouble.of(25))));
    }

    assertThat(raised)
        .extracting(Event.AlarmChanged::kind)
        .contains(AlarmKind.PROBE_NOISY, AlarmKind.FALLING);
    long noisyMs = raisedAt(AlarmKind.PROBE_NOISY);
    long fallingMs = raisedAt(AlarmKind.FALLING);
    assertThat(noisyMs).isLessThan(12_200_000);
    FiringPlan plan = FiringKind.STONEWARE.plan(0);
    double goneS =
        new SimulatedFiring(plan, out.fault(), seed, new KilnModel(plan.kiln(), plan.startC()))
            .faultAtSecond();
    assertThat(fallingMs / 1000.0 - goneS).as("s behind the flame").isBetween(0.0, 600.0);
  }

  @Test
  void kilnStillWarmFromYesterdayIsNoDisagreement() {
    double warmC = 70;
    for (long minute = 0; minute < 16 * 60; minute++) {
      warmC -= (warmC - 15) / (30 * 60); // a heavy kiln: a time constant of 30 h
      put(
          new Input.Measured(
              Reading.linearised(
                  new Moment(0, minute * 60_000), "upper", warmC, OptionalDouble.of(15))));
    }

    assertThat(watch.view().phase()).isEqualTo(Phase.IDLE);
    assertThat(raised).isEmpty();
  }

  @Test
  void winterShedAndABoxThatWarmsItselfAreNoReversal() {
    for (long minute = 0; minute < 600; minute++) {
      double boxC = -2 + 17 * (1 - StrictMath.exp(-minute / 30.0));
      double kilnC = -2 - minute / 100.0;
      put(
          new Input.Measured(
              Reading.linearised(
                  new Moment(0, minute * 60_000), "upper", kilnC, OptionalDouble.of(boxC))));
    }

    assertThat(raised).isEmpty();
  }

  /** What a transmitter linearises of swapped wires: twice E(box) less E(kiln), 100 °C/h. */
  @Test
  void swappedWiresAreFoundThoughTheInstrumentTellsNoColdJunction() {
    ThermocoupleType couple = ThermocoupleType.K;
    for (long second = 0; second < 3600; second += 2) {
      double emfMv = 2 * couple.emfMv(20) - couple.emfMv(20 + second / 36.0);
      put(
          new Input.Measured(
              Reading.linearised(
                  new Moment(0, second * 1000),
                  "upper",
                  couple.temperatureC(emfMv),
                  OptionalDouble.empty())));
    }

    assertThat(raised)
        .extracting(Event.AlarmChanged::kind)
        .containsExactly(AlarmKind.PROBE_REVERSED);
    assertThat(raised.get(0).message()).contains("below freezing", "swapped at the amplifier");
  }

  @Test
  void frostyShedIsNoReversalThoughTheInstrumentTellsNoColdJunction() {
    for (long minute = 0; minute < 1200; minute++) {
      double kilnC = Math.max(8 - minute / 30.0, -28); // 2 °C an hour, down to -28 °C
      put(
          new Input.Measured(
              Reading.linearised(
                  new Moment(0, minute * 60_000), "upper", kilnC, OptionalDouble.empty())));
    }

    assertThat(raised).isEmpty();
  }

  private long raisedAt(AlarmKind kind) {
    return raised.stream()
        .filter(one -> one.kind() == kind)
        .findFirst()
        .orElseThrow()
        .at()
        .millis();
  }

  /**
   * @param everyS s from one reading to the next
   */
  private void play(SimulationSettings settings, long everyS) {
    SimulatedSource source = new SimulatedSource("upper", settings, 0);
    watch = new Watch(SETTINGS);
    long gasOffS = settings.firing().gasOff().toSeconds();
    put(new Input.Began(new Moment(0, 0), ""));
    for (long second = 0; second < settings.firing().cycle().toSeconds(); second += everyS) {
      Moment at = new Moment(0, second * 1000);
      if (second == gasOffS) {
        put(new Input.Declared(at, Phase.COOLING));
      }
      put(new Input.Measured(source.read(at).orElseThrow()));
    }
  }

  private void put(Input input) {
    for (Event event : watch.accept(input).events()) {
      if (event instanceof Event.AlarmChanged changed
          && changed.alarmState() == AlarmState.UNACKNOWLEDGED) {
        raised.add(changed);
      }
    }
  }
}
