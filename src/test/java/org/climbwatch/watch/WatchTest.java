package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Delays;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WatchTest {
  @Test
  void firingBeginsByItselfWhenTheKilnWarmsAndIsDatedBack() {
    List<Event> events = new Script(20).climb(0, 7200).climb(300, 900).events();

    Event.FiringBegan began = (Event.FiringBegan) events.get(0);
    assertThat(began.byItself()).isTrue();
    assertThat(began.at().millis()).isBetween(7_500_000L, 7_600_000L);
    assertThat(began.since().millis()).isBetween(7_100_000L, 7_230_000L);
  }

  @Test
  void warmMorningIsNoFiring() {
    assertThat(new Script(5).climb(4, 6 * 3600).climb(0, 3600).events()).isEmpty();
  }

  @Test
  void twoSparksAreNoFiring() {
    Script script = new Script(20).climb(0, 600);
    script.climb(300_000, 1).climb(-300_000, 1).climb(0, 600).climb(300_000, 1);
    assertThat(script.climb(-300_000, 1).climb(0, 600).events()).isEmpty();
  }

  @Test
  void oneWildLowReadingAtTheStartIsNoFiring() {
    Script script = new Script(-43).climb(0, 1).climb(63 * 3600, 1).climb(0, 7200);

    assertThat(script.events()).isEmpty();
  }

  @Test
  void fastestLightingIsStillSeen() {
    List<Event> events = new Script(20).climb(0, 3600).climb(3000, 120).events();

    assertThat(events.get(0)).isInstanceOf(Event.FiringBegan.class);
  }

  /** A weak fire is trouble to be told of, not a kiln that has been shut. */
  @Test
  void slowDriftDownIsASagAndNotCoolingAndIsSaidOnce() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(150, 6 * 3600)
            .climb(-40, 4 * 3600)
            .events();

    assertThat(alarms(events))
        .extracting(alarm -> alarm.kind() + " " + alarm.alarmState())
        .containsExactly("SAGGING UNACKNOWLEDGED");
    assertThat(events).extracting(Event::subject).doesNotContain("cooling");
  }

  /** A long fall looks the same whether the gas is shut or streams out unlit. */
  @Test
  void lostFlameAlarmStandsUntilThePotterSaysThatTheGasIsOff() {
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(200, 5 * 3600)
            .climb(-400, 2 * 3600);
    Watch watch = new Watch(Script.SETTINGS);
    List<Event> events = Script.eventsOf(watch, script.inputs());
    int done = script.inputs().size();

    assertThat(watch.view().phase()).isEqualTo(Phase.COOLING);
    assertThat(events).extracting(Event::message).anyMatch(m -> m.contains("If you did not shut"));
    assertThat(watch.view().alarms())
        .filteredOn(alarm -> alarm.kind() == AlarmKind.FALLING)
        .extracting(View.StandingAlarm::state)
        .containsExactly(AlarmState.UNACKNOWLEDGED);

    script.deed(at -> new Input.Declared(at, Phase.COOLING)).climb(-400, 5);
    Script.eventsOf(watch, script.inputs().subList(done, script.inputs().size()));

    assertThat(watch.view().firing().orElseThrow().gasOffSaid()).isTrue();
    assertThat(watch.view().alarms())
        .extracting(View.StandingAlarm::state)
        .containsOnly(AlarmState.RETURNED_UNACKNOWLEDGED);
  }

  @Test
  void longOnDelayRunsOutAlsoWhileColdAndIdle() {
    var delays = Delays.ofSeconds(300, 60);
    WatchSettings slow =
        new WatchSettings(
            "top hat",
            OptionalDouble.empty(),
            Script.SETTINGS.probe(),
            Script.SETTINGS.signal(),
            Script.SETTINGS.firing(),
            AlarmSettings.DEFAULT.with(
                new RuleSettings(AlarmKind.PROBE_FAULT, true, Map.of(), delays)));

    List<Event> events =
        Script.eventsOf(
            new Watch(slow), new Script(20).climb(0, 600).faulty(Fault.OPEN_CIRCUIT, 900).inputs());

    assertThat(alarms(events))
        .extracting(Event.AlarmChanged::kind)
        .containsExactly(AlarmKind.PROBE_FAULT);
  }

  @Test
  void pottersWordBeginsHoldsAndEndsAFiring() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, "stoneware 12"))
            .climb(150, 3600)
            .deed(at -> new Input.Declared(at, Phase.HOLDING))
            .climb(0, 3600)
            .deed(at -> new Input.Declared(at, Phase.CLIMBING))
            .climb(150, 600)
            .deed(Input.Ended::new)
            .events();

    assertThat(events)
        .extracting(e -> e.event() + " " + e.subject() + " " + e.state())
        .containsExactly(
            "firing stoneware 12 began",
            "phase climbing entered",
            "phase holding entered",
            "phase climbing entered",
            "firing stoneware 12 ended");
  }

  @Test
  void holdOnPurposeAndDryingAreNoStall() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(100, 1800)
            .climb(0, 7200)
            .climb(150, 3600)
            .deed(at -> new Input.Declared(at, Phase.HOLDING))
            .climb(0, 7200)
            .events();

    assertThat(alarms(events)).isEmpty();
  }

  @Test
  void aFireKeptLowBelowTwoHundredDegreesIsNoStall() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(150, 3600)
            .climb(0, 3600)
            .climb(150, 3600)
            .events();

    assertThat(alarms(events)).isEmpty();
  }

  @Test
  void stallIsRaisedTenMinutesAfterTheClimbWentFlat() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(150, 5 * 3600)
            .climb(0, 1200)
            .events();

    Event.AlarmChanged stall = alarms(events).get(0);
    assertThat(stall.kind()).isEqualTo(AlarmKind.CLIMB_STALLED);
    long afterSeconds = stall.at().millis() / 1000 - 5 * 3600;
    // the three-minute window must go flat first
    assertThat(afterSeconds).isBetween(600L, 800L);
    assertThat(stall.message()).contains("top hat", "upper", "770 °C", "flame at every burner");
  }

  @Test
  void lostFlameIsRaisedWithinAMinuteWithTheGasCautions() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(150, 6 * 3600)
            .climb(-1500, 120)
            .events();

    Event.AlarmChanged falling = alarms(events).get(0);
    assertThat(falling.kind()).isEqualTo(AlarmKind.FALLING);
    assertThat(falling.at().millis() / 1000 - 6 * 3600).isBetween(15L, 60L);
    assertThat(falling.message()).contains("do not relight", "shut the gas");
  }

  @Test
  void tooFastIsRaisedAgainstTheLimitOfTheStage() {
    List<Event> wet = new Script(20).deed(at -> new Input.Began(at, "")).climb(300, 600).events();
    List<Event> dry = new Script(200).deed(at -> new Input.Began(at, "")).climb(300, 3600).events();

    assertThat(alarms(wet)).extracting(Event.AlarmChanged::kind).contains(AlarmKind.CLIMB_TOO_FAST);
    assertThat(alarms(dry)).isEmpty();
  }

  @Test
  void overTemperatureIsWatchedAlsoWithoutAFiring() {
    List<Event> events = new Script(1295).climb(100, 600).events();

    assertThat(alarms(events))
        .extracting(Event.AlarmChanged::kind)
        .contains(AlarmKind.OVER_TEMPERATURE);
  }

  @Test
  void openCircuitAndSilenceAreDifferentAlarmsAndGiveNoTemperature() {
    Watch watch = new Watch(Script.SETTINGS);
    List<Event> open =
        Script.eventsOf(
            watch, new Script(500).climb(0, 300).faulty(Fault.OPEN_CIRCUIT, 60).inputs());
    List<Event> silent = new Script(500).climb(0, 300).faulty(Fault.NO_ANSWER, 60).events();

    assertThat(alarms(open))
        .extracting(Event.AlarmChanged::kind)
        .containsExactly(AlarmKind.PROBE_FAULT);
    assertThat(alarms(silent))
        .extracting(Event.AlarmChanged::kind)
        .containsExactly(AlarmKind.READINGS_STOPPED);
    assertThat(watch.view().latest().orElseThrow().temperatureC()).isEmpty();
    assertThat(watch.view().latest().orElseThrow().fault()).contains(Fault.OPEN_CIRCUIT);
  }

  @Test
  void faultIsSeenInSecondsAlsoWhileColdAndIdle() {
    List<Event> events = new Script(20).climb(0, 3600).faulty(Fault.OPEN_CIRCUIT, 30).events();

    assertThat(alarms(events)).hasSize(1);
    assertThat(events.get(0).at().millis() / 1000 - 3600).isBetween(10L, 15L);
  }

  @Test
  void faultShorterThanItsDelayIsSilent() {
    Script script = new Script(500).climb(0, 300).faulty(Fault.OPEN_CIRCUIT, 5).climb(0, 300);
    assertThat(script.events()).isEmpty();
  }

  @Test
  void acknowledgedByIdOrKindAndSaysSo() {
    List<Event> events =
        new Script(500)
            .climb(0, 300)
            .faulty(Fault.OPEN_CIRCUIT, 60)
            .deed(at -> new Input.Acknowledged(at, "probe_fault", "Ann"))
            .faulty(Fault.OPEN_CIRCUIT, 60)
            .climb(0, 60)
            .events();

    assertThat(alarms(events))
        .extracting(Event.AlarmChanged::alarmState)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.ACKNOWLEDGED, AlarmState.NORMAL);
    assertThat(alarms(events))
        .extracting(Event.AlarmChanged::id)
        .containsOnly("probe_fault-0-310000");
  }

  @Test
  void coldIdleKilnKeepsOneReadingAMinuteAndAFiringAll() {
    Watch watch = new Watch(Script.SETTINGS);
    long idle = kept(watch, new Script(20).climb(0, 3600).inputs());
    long firing =
        kept(
            new Watch(Script.SETTINGS),
            new Script(20).deed(at -> new Input.Began(at, "")).climb(100, 3600).inputs());

    assertThat(idle).isBetween(60L, 95L);
    assertThat(firing).isEqualTo(3601);
  }

  @Test
  void firingGoesOnAfterARebootWithoutARateAcrossTheGap() {
    Script script =
        new Script(20).deed(at -> new Input.Began(at, "night")).climb(150, 5 * 3600).climb(0, 900);
    Watch watch = new Watch(Script.SETTINGS);
    Script.eventsOf(watch, script.inputs());
    View before = watch.view();
    int done = script.inputs().size();

    script.reboot().climb(-2000, 20);
    Script.eventsOf(watch, script.inputs().subList(done, script.inputs().size()));

    View after = watch.view();
    assertThat(after.phase()).isEqualTo(Phase.CLIMBING);
    assertThat(after.firing()).isEqualTo(before.firing());
    assertThat(after.alarms()).isEqualTo(before.alarms());
    assertThat(after.latest().orElseThrow().climb()).isEmpty();
  }

  @Test
  void gasOffIsSeenByItselfAndTheFiringEndsCold() {
    Script script = new Script(20).deed(at -> new Input.Began(at, "")).climb(200, 5 * 3600);
    for (int minute = 0; minute < 8 * 60; minute++) {
      script.climb(-400 * StrictMath.exp(-minute / 150.0), 60);
    }
    List<Event> events = script.events();

    assertThat(events)
        .extracting(e -> e.event() + " " + e.subject() + " " + e.state())
        .contains("phase cooling entered", "firing firing ended");
  }

  @Test
  void relitKilnClimbsAgain() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(200, 5 * 3600)
            .deed(at -> new Input.Declared(at, Phase.COOLING))
            .climb(-300, 3600)
            .climb(200, 1200)
            .events();

    assertThat(events.get(events.size() - 1).subject()).isEqualTo("climbing");
  }

  /** Fast work: the hat is lifted hot, ware drawn, other ware set, and the fire lit again. */
  @ParameterizedTest
  @ValueSource(doubles = {200, 350, 500})
  void kilnThatIsRelitBehindALiftedHatClimbsAtOnce(double openC) {
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(600, 5880)
            .deed(at -> new Input.Declared(at, Phase.COOLING));
    for (int s = 0; s < 900; s++) {
      script.climb(-(1000 - openC) * 3600 / 200 * StrictMath.exp(-s / 200.0), 1);
    }

    List<Event> events = script.climb(1200, 180).events();

    assertThat(events)
        .filteredOn(Event.PhaseChanged.class::isInstance)
        .extracting(Event::subject)
        .endsWith("cooling", "climbing");
  }

  @Test
  void kilnThatClimbsAgainIsNotTakenForCooling() {
    Script script = new Script(20).deed(at -> new Input.Began(at, "")).climb(600, 5880);
    for (int s = 0; s < 900; s++) {
      script.climb(-700 * 3600 / 200 * StrictMath.exp(-s / 200.0), 1);
    }

    assertThat(script.climb(1200, 1800).events())
        .extracting(e -> e.subject() + " " + e.state())
        .doesNotContain("cooling entered");
  }

  private static long kept(Watch watch, List<Input> inputs) {
    return inputs.stream().filter(input -> watch.accept(input).kept()).count();
  }

  static List<Event.AlarmChanged> alarms(List<Event> events) {
    List<Event.AlarmChanged> alarms = new ArrayList<>();
    for (Event event : events) {
      if (event instanceof Event.AlarmChanged alarm) {
        alarms.add(alarm);
      }
    }
    return alarms;
  }

  @Test
  void momentsOfDifferentBootsHaveNoDuration() {
    Moment first = new Moment(0, 5);
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> new Moment(1, 9).millisSince(first))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
