package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Wires that touch, a contact that slips: a number that is not the kiln's must decide nothing. */
class SignalLeavesTheKilnTest {
  private static final int MINUTES = 60;

  private static Script hot() {
    return new Script(20).deed(at -> new Input.Began(at, "")).climb(150, 17_000);
  }

  private static List<AlarmKind> raised(List<Event> events) {
    return events.stream()
        .filter(Event.AlarmChanged.class::isInstance)
        .map(Event.AlarmChanged.class::cast)
        .filter(one -> one.alarmState() == AlarmState.UNACKNOWLEDGED)
        .map(Event.AlarmChanged::kind)
        .toList();
  }

  private static List<Phase> phases(List<Event> events) {
    return events.stream()
        .filter(Event.PhaseChanged.class::isInstance)
        .map(one -> ((Event.PhaseChanged) one).phase())
        .toList();
  }

  @Test
  void aShortedLeadIsSaidAndDoesNotEndTheFiring() {
    List<Event> events = hot().leap(-700).climb(0, 120 * MINUTES).events();

    assertThat(raised(events)).containsExactly(AlarmKind.PROBE_LEAPT);
    assertThat(phases(events)).containsExactly(Phase.CLIMBING);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
    assertThat(events.toString())
        .contains("top hat, probe upper: the signal leapt down by 700 °C", "two wires touch");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-840, -650, -300})
  void aCoolingKilnIsNeitherColdNorCoolEnoughByALeap(double leapC) {
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(190, 17_000)
            .deed(at -> new Input.Declared(at, Phase.COOLING))
            .climb(-300, 300)
            .leap(leapC)
            .climb(-1, 30 * MINUTES);
    List<Event> events = script.events();

    assertThat(raised(events)).containsExactly(AlarmKind.PROBE_LEAPT);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  @ParameterizedTest
  @ValueSource(doubles = {600, 250, -400})
  void aMomentOnAnotherLevelCostsTheFiringNothing(double leapC) {
    List<Event> events =
        hot()
            .leap(leapC)
            .climb(150, 15)
            .leap(-leapC)
            .climb(150, 40 * MINUTES)
            .climb(5, 30 * MINUTES)
            .events();

    assertThat(phases(events)).containsExactly(Phase.CLIMBING);
    assertThat(raised(events))
        .contains(AlarmKind.CLIMB_STALLED)
        .doesNotContain(AlarmKind.TARGET_REACHED, AlarmKind.PROBE_LEAPT, AlarmKind.FALLING);
  }

  @Test
  void itIsOverOnceTheSignalIsBack() {
    Script script = hot().leap(-700).climb(0, 10 * MINUTES).leap(725).climb(150, 5 * MINUTES);
    Watch watch = new Watch(Script.SETTINGS);
    Script.eventsOf(watch, script.inputs());

    assertThat(watch.view().alarms())
        .extracting(View.StandingAlarm::kind, View.StandingAlarm::state)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(
                AlarmKind.PROBE_LEAPT, AlarmState.RETURNED_UNACKNOWLEDGED));
  }

  @Test
  void aFlameLostAfterItsReturnIsSeen() {
    List<Event> events =
        hot()
            .leap(-700)
            .climb(0, 10 * MINUTES)
            .leap(725)
            .climb(150, 5 * MINUTES)
            .climb(-500, 2 * MINUTES)
            .events();

    assertThat(raised(events)).containsExactly(AlarmKind.PROBE_LEAPT, AlarmKind.FALLING);
  }

  @Test
  void theWordOfThePotterMakesItsNumberRight() {
    Script script =
        hot()
            .leap(-400)
            .climb(150, 10 * MINUTES)
            .deed(at -> new Input.Declared(at, Phase.CLIMBING))
            .climb(150, 20 * MINUTES);
    List<Event> events = script.climb(0, 30 * MINUTES).events();

    assertThat(raised(events)).contains(AlarmKind.PROBE_LEAPT, AlarmKind.CLIMB_STALLED);
  }

  @Test
  void theTimeAwayIsNoTimeInWhichTheKilnHasFallen() {
    List<Event> events =
        hot().leap(-700).climb(0, 45 * MINUTES).leap(600).climb(300, 10 * MINUTES).events();

    assertThat(phases(events)).containsExactly(Phase.CLIMBING);
  }

  @Test
  void shuttingTheGasMakesNoColdKilnOfAShortedLead() {
    List<Event> events =
        hot()
            .leap(-700)
            .climb(0, 10 * MINUTES)
            .deed(at -> new Input.Declared(at, Phase.COOLING))
            .climb(0, 30 * MINUTES)
            .events();

    assertThat(raised(events)).containsExactly(AlarmKind.PROBE_LEAPT);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  @ParameterizedTest
  @ValueSource(doubles = {300, -100, 60})
  void timeAloneMakesNoNumberRight(double leapC) {
    List<Event> events = hot().leap(leapC).climb(150, 90 * MINUTES).events();

    assertThat(raised(events)).containsExactly(AlarmKind.PROBE_LEAPT);
    assertThat(events.toString()).doesNotContain("No longer so");
  }

  @Test
  void itStaysAwayOverFaultsAndARestart() {
    List<Event> events =
        hot()
            .leap(-700)
            .climb(0, 5 * MINUTES)
            .faulty(Fault.OPEN_CIRCUIT, 4)
            .climb(0, 5 * MINUTES)
            .reboot()
            .climb(0, 60 * MINUTES)
            .events();

    assertThat(phases(events)).containsExactly(Phase.CLIMBING);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  @ParameterizedTest
  @CsvSource({"OPEN_CIRCUIT,5", "OPEN_CIRCUIT,65", "OPEN_CIRCUIT,300", "NO_ANSWER,70"})
  void aLeadThatShortsWhileItGivesNothingIsFound(Fault fault, int seconds) {
    List<Event> events = hot().faulty(fault, seconds).leap(-700).climb(0, 60 * MINUTES).events();

    assertThat(raised(events)).contains(AlarmKind.PROBE_LEAPT);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  /**
   * Of slow readings nobody can tell a lead that shorts at the kiln from a door: but it is said.
   */
  @ParameterizedTest
  @CsvSource({"5,150,25", "10,150,25", "10,70,25", "5,25,", "10,25,"})
  void slowReadingsOfAnotherLevelAreNotPassedOver(int intervalS, double levelC, Double terminalsC) {
    OptionalDouble terminals =
        terminalsC == null ? OptionalDouble.empty() : OptionalDouble.of(terminalsC);
    Watch watch = new Watch(Script.SETTINGS);
    List<Input> inputs = new ArrayList<>(List.of(new Input.Began(new Moment(0, 0), "")));
    for (int s = 0; s < 17_600; s += intervalS) {
      double celsius = s < 17_000 ? 100 + s * 150.0 / 3600 : levelC + s % 4 * 0.1;
      Moment at = new Moment(0, s * 1000L);
      inputs.add(new Input.Measured(Reading.linearised(at, "upper", celsius, terminals)));
    }

    assertThat(raised(Script.eventsOf(watch, inputs))).contains(AlarmKind.FALLING);
  }

  /** A lead that shorts and breaks by turns. */
  @ParameterizedTest
  @CsvSource({"1,1", "2,1", "2,2", "1,2"})
  void aShortedLeadThatBreaksOffNowAndThenMakesNoKilnCool(int readings, int faults) {
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(190, 17_000)
            .deed(at -> new Input.Declared(at, Phase.COOLING))
            .climb(-300, 300)
            .leap(-840);
    for (int i = 0; i < 600; i++) {
      script.climb(0, readings).faulty(Fault.OPEN_CIRCUIT, faults);
    }
    List<Event> events = script.events();

    assertThat(raised(events)).doesNotContain(AlarmKind.SAFE_TO_OPEN);
    assertThat(raised(events)).containsAnyOf(AlarmKind.PROBE_LEAPT, AlarmKind.PROBE_JUMPS);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  /** Clocks may be wrong behind a power cut: a kiln that has cooled meanwhile is no leap. */
  @Test
  void aKilnThatCooledWhileTheMachineWasOffIsNone() {
    Script script = hot().deed(at -> new Input.Declared(at, Phase.COOLING)).climb(-100, 600);
    List<Event> events =
        script
            .reboot(Duration.ofHours(3))
            .reboot(Duration.ofSeconds(25))
            .leap(-550)
            .climb(-100, 60 * MINUTES)
            .events();

    assertThat(raised(events)).doesNotContain(AlarmKind.PROBE_LEAPT);
  }

  @Test
  void oneReadingBetweenIsNoWayOfACouple() {
    List<Event> events = hot().leap(-300).climb(0, 1).leap(-375).climb(0, 60 * MINUTES).events();

    assertThat(raised(events)).containsExactly(AlarmKind.PROBE_LEAPT);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  @Test
  void aFlameLostBehindALeapIsToldWithoutTheLeap() {
    List<Event> events = hot().leap(-250).climb(100, 30).climb(-600, 15 * MINUTES).events();

    assertThat(events.toString()).doesNotContainPattern("falling \\d{4} °C/h");
  }

  @Test
  void switchedOffNothingWaitsForTheSignalToComeBack() {
    AlarmSettings usual = Script.SETTINGS.alarm();
    RuleSettings leapt = usual.of(AlarmKind.PROBE_LEAPT);
    AlarmSettings without =
        usual.with(new RuleSettings(leapt.alarm(), false, leapt.numbers(), leapt.delays()));
    Watch watch = new Watch(Script.SETTINGS.with(without));
    List<Event> events = Script.eventsOf(watch, hot().leap(-700).climb(0, 240 * MINUTES).inputs());

    assertThat(raised(events)).doesNotContain(AlarmKind.PROBE_LEAPT);
    assertThat(events).anyMatch(Event.FiringEnded.class::isInstance);
  }

  /** A process meter that averages: its short looks like a probe that is drawn out of the fire. */
  @ParameterizedTest
  @ValueSource(doubles = {3, 10, 60})
  void aShortThatAMeterFiltersMakesNoBurningKilnCold(double filterS) {
    List<Event> events = sinking(hot(), filterS).climb(0, 75 * MINUTES).events();

    assertThat(raised(events)).containsAnyOf(AlarmKind.FALLING, AlarmKind.CLIMB_STALLED);
    assertThat(phases(events)).containsExactly(Phase.CLIMBING);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  @ParameterizedTest
  @ValueSource(doubles = {3, 10, 60})
  void nothingIsCoolEnoughToOpenThatCannotHaveCooledSoFast(double filterS) {
    Script script =
        hot().deed(at -> new Input.Declared(at, Phase.COOLING)).climb(-300, 10 * MINUTES);
    List<Event> events = sinking(script, filterS).climb(0, 75 * MINUTES).events();

    assertThat(raised(events)).doesNotContain(AlarmKind.SAFE_TO_OPEN);
    assertThat(events).noneMatch(Event.FiringEnded.class::isInstance);
  }

  /** The program is started anew in the same boot and the lead shorts meanwhile. */
  @Test
  void aShortDuringARestartMakesNoBurningKilnCold() {
    Script script =
        hot().deed(at -> new Input.Resumed(at, Duration.ZERO)).leap(-700).climb(0, 75 * MINUTES);

    assertThat(script.events()).noneMatch(Event.FiringEnded.class::isInstance);
  }

  /** A hat that is lifted after fast work: late, but the evening comes to its end. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aKilnThatStandsOpenIsColdInTheEnd(boolean said) {
    Script script = said ? hot().deed(at -> new Input.Declared(at, Phase.COOLING)) : hot();
    List<Event> events = sinking(script, 200).climb(0, 240 * MINUTES).events();

    assertThat(raised(events)).contains(AlarmKind.SAFE_TO_OPEN);
    assertThat(events).anyMatch(Event.FiringEnded.class::isInstance);
  }

  @ParameterizedTest
  @ValueSource(doubles = {3, 10})
  void aShortThatIsOverIsNoWarming(double filterS) {
    Script script = sinking(hot().deed(at -> new Input.Declared(at, Phase.COOLING)), filterS);
    script.climb(0, 5 * MINUTES);
    for (double s = 0; s < 6 * filterS; s++) {
      script.climb(660 * 3600 / filterS * StrictMath.exp(-s / filterS), 1);
    }
    List<Event> events = script.climb(-300, 60 * MINUTES).events();

    assertThat(phases(events)).containsExactly(Phase.CLIMBING, Phase.COOLING);
  }

  /** From 728 °C and less to 28. */
  private static Script sinking(Script script, double lagS) {
    for (double s = 0; s < 6 * lagS; s++) {
      script.climb(-680 * 3600 / lagS * StrictMath.exp(-s / lagS), 1);
    }
    return script;
  }
}
