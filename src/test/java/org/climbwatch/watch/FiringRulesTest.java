package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.firing.Phase;
import org.climbwatch.firing.Plan;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Target, hold, plan, cooling and the probe's own limit: when each comes and when it is silent. */
class FiringRulesTest {
  private static final FiringSettings USUAL = FiringSettings.DEFAULT;
  private static final ProbeSettings PROBE = Script.SETTINGS.probe();

  private static Watch watch(ProbeSettings probe, FiringSettings firing, AlarmSettings alarm) {
    WatchSettings base = Script.SETTINGS;
    return new Watch(
        new WatchSettings(base.kiln(), base.targetC(), probe, base.signal(), firing, alarm));
  }

  private static Watch meaning(OptionalDouble holdMinutes, Plan plan) {
    FiringSettings firing =
        new FiringSettings(
            USUAL.beginsByItself(),
            USUAL.beginRiseC(),
            USUAL.dryBelowC(),
            USUAL.coolingDropC(),
            USUAL.coolingAfterSeconds(),
            USUAL.endBelowC(),
            holdMinutes,
            plan);
    return watch(PROBE, firing, AlarmSettings.DEFAULT);
  }

  private static List<Event.AlarmChanged> alarms(Watch watch, Script script, AlarmKind kind) {
    return Script.eventsOf(watch, script.inputs()).stream()
        .filter(event -> event instanceof Event.AlarmChanged)
        .map(event -> (Event.AlarmChanged) event)
        .filter(alarm -> alarm.kind() == kind)
        .toList();
  }

  private static List<Event.AlarmChanged> alarms(Script script, AlarmKind kind) {
    return alarms(new Watch(Script.SETTINGS), script, kind);
  }

  private static Script begun(double startC) {
    return new Script(startC).deed(at -> new Input.Began(at, "stoneware"));
  }

  private static Script cooling(double startC) {
    return begun(startC).deed(at -> new Input.Declared(at, Phase.COOLING));
  }

  @Test
  void theTargetIsAnnouncedOnceAndReturnsWhenTheKilnCools() {
    Script script =
        begun(1240)
            .climb(120, 900)
            .climb(-30, 600)
            .climb(30, 600)
            .deed(at -> new Input.Declared(at, Phase.COOLING))
            .climb(-300, 60);

    List<Event.AlarmChanged> reached = alarms(script, AlarmKind.TARGET_REACHED);
    assertThat(reached)
        .extracting(Event.AlarmChanged::alarmState)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.RETURNED_UNACKNOWLEDGED);
    assertThat(reached.get(0).message()).contains("1260 °C").contains("cones");
  }

  @Test
  void theHoldIsOverAfterItsTimeAndNotBefore() {
    OptionalDouble twenty = OptionalDouble.of(20);
    Script script =
        begun(1100)
            .climb(100, 300)
            .deed(at -> new Input.Declared(at, Phase.HOLDING))
            .climb(0, 1190);
    assertThat(alarms(meaning(twenty, Plan.NONE), script, AlarmKind.HOLD_OVER)).isEmpty();

    script.climb(0, 15);
    assertThat(alarms(meaning(twenty, Plan.NONE), script, AlarmKind.HOLD_OVER).get(0).message())
        .contains("held for 20 min; 20 min were meant");
    assertThat(alarms(script, AlarmKind.HOLD_OVER)).as("no time is set").isEmpty();
  }

  /** As docs/alarms.md says: nobody may wait for what does not come. */
  @Test
  void theHoldIsNotOverBehindAPowerCutUntilItIsSaidAnew() {
    OptionalDouble twenty = OptionalDouble.of(20);
    Script script =
        begun(1100)
            .climb(100, 300)
            .deed(at -> new Input.Declared(at, Phase.HOLDING))
            .climb(0, 900)
            .reboot(Duration.ofMinutes(2))
            .climb(0, 3600);
    assertThat(alarms(meaning(twenty, Plan.NONE), script, AlarmKind.HOLD_OVER)).isEmpty();

    script
        .deed(at -> new Input.Declared(at, Phase.CLIMBING))
        .deed(at -> new Input.Declared(at, Phase.HOLDING))
        .climb(0, 1205);
    assertThat(alarms(meaning(twenty, Plan.NONE), script, AlarmKind.HOLD_OVER).get(0).message())
        .contains("held for 20 min; 20 min were meant");
  }

  @Test
  void aFiringThatLagsBehindItsPlanIsNamedAndOneOnItIsNot() {
    Plan plan = new Plan(List.of(new Plan.Segment(150, 900, 60)));
    Watch well = meaning(OptionalDouble.empty(), plan);
    List<Event> onPlan = Script.eventsOf(well, begun(20).climb(150, 4 * 3600).inputs());
    List<Event.AlarmChanged> behind =
        alarms(
            meaning(OptionalDouble.empty(), plan),
            begun(20).climb(100, 4 * 3600),
            AlarmKind.BEHIND_PLAN);
    List<Event.AlarmChanged> ahead =
        alarms(
            meaning(OptionalDouble.empty(), plan),
            begun(20).climb(195, 4 * 3600),
            AlarmKind.AHEAD_OF_PLAN);

    assertThat(onPlan).noneMatch(event -> event.subject().contains("plan"));
    // 75 °C behind after 1.5 h, and ten minutes of on-delay
    assertThat(behind.get(0).at().millis() / 1000).isBetween(5990L, 6010L);
    assertThat(behind.get(0).message()).contains("°C behind the plan");
    assertThat(ahead.get(0).message()).contains("ahead of the plan");
  }

  @Test
  void aHoldThatIsInThePlanIsNoStallAndAStallBesideThePlanIsOne() {
    Plan plan = new Plan(List.of(new Plan.Segment(150, 620, 60), new Plan.Segment(150, 1200, 0)));
    Watch held = meaning(OptionalDouble.empty(), plan);
    Script asPlanned = begun(20).climb(150, 4 * 3600).climb(0, 1800).climb(-25, 1800);
    Script tooLow = begun(20).climb(150, 12_720).climb(0, 4800); // 70 °C short of the hold
    Script tooLong = begun(20).climb(150, 4 * 3600).climb(0, 5400);

    assertThat(Script.eventsOf(held, asPlanned.inputs()))
        .noneMatch(event -> event instanceof Event.AlarmChanged);
    assertThat(stalledAtS(plan, tooLow)).isBetween(13_300L, 13_500L);
    assertThat(stalledAtS(plan, tooLong)).as("the hold is over").isBetween(18_590L, 18_620L);
  }

  /** Down by 100 °C and on again: a fire that is turned down as meant is none that has gone out. */
  @Test
  void aWayDownThatThePlanHasBeforeItClimbsOnIsNoCooling() {
    Plan plan =
        new Plan(
            List.of(
                new Plan.Segment(150, 1000, 30),
                new Plan.Segment(100, 880, 30),
                new Plan.Segment(100, 1050, 0)));
    Script asPlanned = begun(20).climb(150, 23_520).climb(0, 1800).climb(-100, 4320).climb(0, 1800);
    Script flameLost = begun(20).climb(150, 23_520).climb(0, 1800).climb(-500, 3600);

    assertThat(phases(plan, asPlanned)).containsExactly(Phase.CLIMBING);
    assertThat(phases(plan, flameLost)).containsExactly(Phase.CLIMBING, Phase.COOLING);
  }

  /** 150 °C down in half an hour and slowly on: over before a fall is long enough to be one. */
  @Test
  void aQuickWayDownOfThePlanIsNoCoolingEither() {
    Plan plan =
        new Plan(
            List.of(
                new Plan.Segment(150, 1000, 0),
                new Plan.Segment(400, 860, 0),
                new Plan.Segment(60, 1050, 0)));

    assertThat(phases(plan, begun(20).climb(150, 23_520).climb(-400, 1260).climb(60, 3600)))
        .containsExactly(Phase.CLIMBING);
  }

  @Test
  void aKilnAboveAHoldOfThePlanMaySink() {
    Plan plan = new Plan(List.of(new Plan.Segment(150, 620, 120), new Plan.Segment(150, 1200, 0)));
    Script sinks = begun(20).climb(165, 4 * 3600).climb(-40, 4000);

    assertThat(alarms(meaning(OptionalDouble.empty(), plan), sinks, AlarmKind.SAGGING)).isEmpty();
  }

  @Test
  void whatSinksBelowAHoldOfThePlanIsToldWithThePlan() {
    Plan plan = new Plan(List.of(new Plan.Segment(150, 620, 120), new Plan.Segment(150, 1200, 0)));
    Script sinks = begun(20).climb(150, 4 * 3600).climb(-40, 4000);

    assertThat(alarms(meaning(OptionalDouble.empty(), plan), sinks, AlarmKind.SAGGING))
        .first()
        .satisfies(one -> assertThat(one.message()).contains("while it should be at 620 °C by"));
  }

  private static List<Phase> phases(Plan plan, Script script) {
    Watch watch = meaning(OptionalDouble.empty(), plan);
    return Script.eventsOf(watch, script.inputs()).stream()
        .filter(Event.PhaseChanged.class::isInstance)
        .map(event -> ((Event.PhaseChanged) event).phase())
        .toList();
  }

  /** The fall that was meant is no fall of the fire either when the plan leads up again. */
  @Test
  void aWayDownThatThePlanWantedIsForgottenWhereItLeadsUp() {
    Plan plan =
        new Plan(
            List.of(
                new Plan.Segment(200, 1020, 0),
                new Plan.Segment(100, 870, 10),
                new Plan.Segment(100, 1200, 0)));
    Script script = begun(20).climb(200, 5 * 3600).climb(-100, 5400).climb(0, 600).climb(100, 3600);

    assertThat(Script.eventsOf(meaning(OptionalDouble.empty(), plan), script.inputs()))
        .filteredOn(Event.PhaseChanged.class::isInstance)
        .extracting(event -> ((Event.PhaseChanged) event).phase())
        .containsExactly(Phase.CLIMBING);
  }

  private static long stalledAtS(Plan plan, Script script) {
    return alarms(meaning(OptionalDouble.empty(), plan), script, AlarmKind.CLIMB_STALLED)
            .get(0)
            .at()
            .millis()
        / 1000;
  }

  @Test
  void coolingTooFastIsSaidInTheRangeWhereWareCracksOnly() {
    Script glazeIsSoft = cooling(1200).climb(-600, 2700);
    Script cracks = cooling(720).climb(-1000, 900).climb(-300, 3000);
    Script shutFibreKiln = cooling(900).climb(-350, 7000);

    assertThat(alarms(glazeIsSoft, AlarmKind.COOLING_TOO_FAST)).isEmpty();
    assertThat(alarms(cracks, AlarmKind.COOLING_TOO_FAST))
        .extracting(Event.AlarmChanged::alarmState)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.RETURNED_UNACKNOWLEDGED);
    assertThat(alarms(shutFibreKiln, AlarmKind.COOLING_TOO_FAST)).isEmpty();
  }

  @Test
  void aCooledKilnIsSaidToBeCoolEnoughToOpen() {
    Event.AlarmChanged open = alarms(cooling(300).climb(-150, 5400), AlarmKind.SAFE_TO_OPEN).get(0);

    assertThat(open.message()).contains("below 95 °C").contains("gas is shut");
    assertThat(alarms(begun(60).climb(30, 600), AlarmKind.SAFE_TO_OPEN))
        .as("on the way up")
        .isEmpty();
  }

  @Test
  void aProbeOverItsOwnLimitIsNamedAndOneWithoutALimitIsNot() {
    ProbeSettings thin =
        new ProbeSettings(
            "upper", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1, true, OptionalDouble.of(1090));
    Script script = begun(1080).climb(120, 900);

    assertThat(
            alarms(watch(thin, USUAL, AlarmSettings.DEFAULT), script, AlarmKind.PROBE_TOO_HOT)
                .get(0)
                .message())
        .contains("1090 °C that this probe may be used to");
    assertThat(alarms(script, AlarmKind.PROBE_TOO_HOT)).isEmpty();
  }

  @Test
  void theSpeedLimitIsThatOfTheRangeTheKilnIsIn() {
    RuleSettings usual = AlarmSettings.DEFAULT.of(AlarmKind.CLIMB_TOO_FAST);
    Map<String, Double> numbers = new TreeMap<>(usual.numbers());
    numbers.put("quartz_limit_c_per_h", 100.0);
    AlarmSettings careful =
        AlarmSettings.DEFAULT.with(new RuleSettings(usual.alarm(), true, numbers, usual.delays()));
    // at 150 °C/h from 300 °C on, 540 °C is reached after 5760 s
    List<Event.AlarmChanged> fast =
        alarms(watch(PROBE, USUAL, careful), begun(300).climb(150, 9600), AlarmKind.CLIMB_TOO_FAST);

    assertThat(fast.get(0).at().millis() / 1000).isBetween(5815L, 5900L);
    assertThat(fast)
        .extracting(Event.AlarmChanged::alarmState)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.RETURNED_UNACKNOWLEDGED);
  }

  /**
   * The newest reading of a noisy probe mostly lies under its highest, however fast it climbs.
   * Rougher than this, the noise itself is the finding, and no climb is taken from it.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.3, 2, 3})
  void aClimbTooFastIsSaidBehindANoisyProbe(double noiseC) {
    Curve firing =
        new Curve(1240).begin(18).steady(100, 270).noisy(noiseC).steady(110, 180).steady(900, 10);

    assertThat(firing.raised(AlarmKind.CLIMB_TOO_FAST)).hasSize(1);
  }
}
