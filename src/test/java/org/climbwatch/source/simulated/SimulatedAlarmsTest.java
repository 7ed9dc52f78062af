package org.climbwatch.source.simulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the watch, with its own default settings, makes of the model's firings. */
class SimulatedAlarmsTest {
  private static final WatchSettings SETTINGS =
      new WatchSettings(
          "top hat",
          OptionalDouble.empty(),
          new ProbeSettings("upper", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1),
          SignalSettings.DEFAULT,
          FiringSettings.DEFAULT,
          AlarmSettings.DEFAULT);

  /** A raised alarm and the kiln's minute. */
  private record Raised(AlarmKind kind, double minute) {}

  @Test
  void aStonewareFiringThatGoesWellIsQuietUntilTheGasIsShut() {
    assertThat(raised(FiringKind.STONEWARE, 1, FaultKind.NONE, 545)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "stall,           CLIMB_STALLED",
    "burner_out,      FALLING",
    "runaway,         CLIMB_TOO_FAST",
    "open_circuit,    PROBE_FAULT",
    "short_to_ground, PROBE_FAULT",
    "silence,         READINGS_STOPPED",
    "short_to_supply, PROBE_FAULT",
    "stuck,           PROBE_STUCK",
    "probe_noise,     PROBE_NOISY",
    "jumps,           PROBE_JUMPS",
    "hot_box,         COLD_JUNCTION_HOT",
    "box_draught,     COLD_JUNCTION_UNSTEADY",
    "reversed,        PROBE_REVERSED"
  })
  void eachFaultRaisesItsAlarmFirst(String fault, AlarmKind kind) {
    for (long seed = 1; seed <= 3; seed++) {
      List<Raised> raised = raised(FiringKind.STONEWARE, seed, FaultKind.ofWord(fault), 545);

      assertThat(raised).isNotEmpty();
      assertThat(raised.get(0).kind()).isEqualTo(kind);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void sparksReachReadingsOfASingleLookAndNoneOfTen(long seed) {
    List<Judged> single = sparking(seed, 1);
    List<Judged> several = sparking(seed, 10);

    assertThat(single).anyMatch(judged -> judged.fault().isPresent());
    assertThat(single.stream().filter(SimulatedAlarmsTest::disturbed).count())
        .as("of %d", single.size())
        .isGreaterThan(single.size() / 20);
    assertThat(several.stream().filter(SimulatedAlarmsTest::disturbed)).isEmpty();
  }

  private static boolean disturbed(Judged judged) {
    return judged.spike() || judged.fault().isPresent();
  }

  /** Half an hour before the gas is shut, when the igniter has long been out of order. */
  private static List<Judged> sparking(long seed, int looks) {
    SimulatedSource source =
        new SimulatedSource(
            "upper",
            new SimulationSettings(
                FiringKind.STONEWARE, seed, FaultKind.SPARKS, Place.UPPER, looks),
            0);
    Watch watch = new Watch(SETTINGS);
    List<Judged> judged = new ArrayList<>();
    for (long second = 500 * 60; second < 530 * 60; second++) {
      Reading reading = source.read(new Moment(0, second * 1000)).orElseThrow();
      judged.add(watch.accept(new Input.Measured(reading)).judged().orElseThrow());
    }
    return judged;
  }

  /** One minute of kiln time is one second of a potter's patience. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 7, 42})
  void theDemoShowsAClimbWithinHalfAMinuteAndRaisesOneAlarmWithinThree(long seed) {
    SimulatedSource source = source(FiringKind.DEMO, seed, FaultKind.NONE);

    assertThat(celsius(source, 0)).isBetween(110.0, 170.0);
    assertThat(celsius(source, 30) - celsius(source, 20)).isBetween(50.0, 85.0);
    assertThat(celsius(source, 30)).isGreaterThan(300);
    assertThat(celsius(source, 90)).isBetween(750.0, 900.0);
    List<Raised> raised = raised(FiringKind.DEMO, seed, FaultKind.NONE, 180);
    assertThat(raised).hasSize(1);
    assertThat(raised.get(0).kind()).isEqualTo(AlarmKind.CLIMB_STALLED);
    assertThat(raised.get(0).minute()).isBetween(120.0, 155.0);
  }

  @Test
  void theDemoRecoversWithAnotherBottleComesToItsEndAndIsLitAgain() {
    SimulatedSource source = source(FiringKind.DEMO, 1, FaultKind.NONE);

    double stalledC = celsius(source, 199);
    assertThat(celsius(source, 220) - stalledC).isGreaterThan(60);
    double topC = celsius(source, 279);
    assertThat(topC).isBetween(1000.0, 1150.0);
    assertThat(topC - celsius(source, 340)).isBetween(200.0, 500.0);
    long relit = FiringKind.DEMO.cycle().toMinutes() - 65;
    assertThat(celsius(source, relit - 120)).as("cold for two hours").isLessThan(40);
    assertThat(celsius(source, relit + 200)).isGreaterThan(950);
  }

  @Test
  void theDemosLaterRoundHasNoStall() {
    SimulatedSource source = source(FiringKind.DEMO, 1, FaultKind.NONE);
    long relit = FiringKind.DEMO.cycle().toMinutes() - 62;
    List<Raised> raised = raised(source, relit - 60, relit + 235);

    assertThat(raised).extracting(Raised::kind).doesNotContain(AlarmKind.CLIMB_STALLED);
  }

  private static List<Raised> raised(
      FiringKind firing, long seed, FaultKind fault, long untilMinute) {
    return raised(source(firing, seed, fault), 0, untilMinute);
  }

  private static List<Raised> raised(SimulatedSource source, long fromMinute, long untilMinute) {
    Watch watch = new Watch(SETTINGS);
    List<Raised> raised = new ArrayList<>();
    for (long second = fromMinute * 60; second < untilMinute * 60; second++) {
      Moment at = new Moment(0, second * 1000);
      for (Event event : watch.accept(new Input.Measured(source.read(at).orElseThrow())).events()) {
        if (event instanceof Event.AlarmChanged changed
            && changed.alarmState() == AlarmState.UNACKNOWLEDGED) {
          raised.add(new Raised(changed.kind(), second / 60.0));
        }
      }
    }
    return raised;
  }

  private static double celsius(SimulatedSource source, long minute) {
    source.read(new Moment(0, minute * 60_000));
    return source.trueC();
  }

  private static SimulatedSource source(FiringKind firing, long seed, FaultKind fault) {
    return new SimulatedSource("upper", new SimulationSettings(firing, seed, fault), 0);
  }
}
