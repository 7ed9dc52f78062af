package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The two grades of a fall, and what looks like one and is none. Rates are common practice. */
class FallingFireTest {
  private static final int OUT_AT_S = 5 * 3600;

  /**
   * A chamber that turns at once from 150 °C/h up to a fall, seen through a probe of the first
   * order: 36 s for 3 mm at 400 °C, 60 to 180 s for a ceramic tube at 600 to 1000 °C.
   */
  @ParameterizedTest
  @CsvSource({"36, 1000", "60, 1000", "120, 1500", "180, 3000"})
  void lostFlameIsToldWithinAMinuteBehindASlowProbe(double lagS, double fallCPerHour) {
    Script script = climbing();
    for (int s = 0; s < 120; s++) {
      double turned = 1 - StrictMath.exp(-(s + 0.5) / lagS);
      script.climb(150 - turned * (150 + fallCPerHour), 1);
    }

    List<Event.AlarmChanged> raised = raised(script);

    assertThat(raised).extracting(Event.AlarmChanged::kind).containsExactly(AlarmKind.FALLING);
    assertThat(raised.get(0).at().millis() / 1000 - OUT_AT_S).isBetween(5L, 60L);
    assertThat(raised.get(0).message())
        .containsSubsequence("top hat", "upper", "FLAME MAY BE OUT", "shut the gas")
        .contains("do not relight", "wait 5 min");
  }

  /**
   * Thick tubes at a low heat answer with minutes (common practice). A minute after the flame went
   * they still read higher than they will ever read again but one degree; only their bend tells.
   */
  @ParameterizedTest
  @CsvSource({"170, 310, 1400", "230, 310, 2200", "300, 200, 2200", "150, 300, 1600"})
  void lostFlameIsToldWhileASlowProbeStillHidesTheFall(
      double lagS, double climbCPerHour, double fallCPerHour) {
    Script script =
        new Script(20).deed(at -> new Input.Began(at, "thick tube")).climb(climbCPerHour, 5400);
    for (int s = 0; s < 120; s++) {
      double turned = 1 - StrictMath.exp(-(s + 0.5) / lagS);
      script.climb(climbCPerHour - turned * (climbCPerHour + fallCPerHour), 1);
    }

    List<Event.AlarmChanged> raised =
        raised(script).stream().filter(one -> one.kind() == AlarmKind.FALLING).toList();

    assertThat(raised).hasSize(1);
    assertThat(raised.get(0).at().millis() / 1000 - 5400).isBetween(5L, 62L);
    assertThat(raised.get(0).message())
        .containsPattern(
            "falling \\d+ °C/h at \\d+ °C, [3-9] °C below where its climb was leading");
  }

  /** The gas is turned down to a gentle climb, behind the same probes: it bends, and is no fall. */
  @ParameterizedTest
  @CsvSource({"40, 310, 0", "170, 310, 0", "170, 310, -60", "230, 600, 50", "300, 200, -80"})
  void fireTurnedDownBehindASlowProbeIsNoLostFlame(
      double lagS, double climbCPerHour, double thenCPerHour) {
    Script script =
        new Script(20).deed(at -> new Input.Began(at, "thick tube")).climb(climbCPerHour, 5400);
    for (int s = 0; s < 600; s++) {
      double turned = 1 - StrictMath.exp(-(s + 0.5) / lagS);
      script.climb(climbCPerHour + turned * (thenCPerHour - climbCPerHour), 1);
    }

    assertThat(raised(script))
        .extracting(Event.AlarmChanged::kind)
        .doesNotContain(AlarmKind.FALLING);
  }

  /** A kiln that cools by itself is no word of anybody that the gas is off. */
  @Test
  void aLatchedLostFlameWaitsForThePottersWord() {
    Script script =
        climbing()
            .climb(-800, 180)
            .deed(at -> new Input.Acknowledged(at, "falling", "Ann"))
            .climb(200, 600)
            .climb(-90, 5400);
    Watch watch = new Watch(Script.SETTINGS);
    Script.eventsOf(watch, script.inputs());

    assertThat(watch.view().phase()).isEqualTo(Phase.COOLING);
    assertThat(stateOfFalling(watch)).isEqualTo(AlarmState.LATCHED);

    script.deed(at -> new Input.Declared(at, Phase.COOLING)).climb(-90, 5);
    Watch told = new Watch(Script.SETTINGS);
    Script.eventsOf(told, script.inputs());

    assertThat(stateOfFalling(told)).isEqualTo(AlarmState.SUPPRESSED_BY_DESIGN);
  }

  private static AlarmState stateOfFalling(Watch watch) {
    return watch.view().watched().stream()
        .filter(one -> one.kind() == AlarmKind.FALLING)
        .findFirst()
        .orElseThrow()
        .state();
  }

  @Test
  void slowSinkingIsTheMildGradeAndSpeaksForTheStall() {
    List<Event.AlarmChanged> raised = raised(climbing().climb(-40, 1200));

    assertThat(raised).extracting(Event.AlarmChanged::kind).containsExactly(AlarmKind.SAGGING);
    assertThat(raised.get(0).at().millis() / 1000 - OUT_AT_S).isBetween(240L, 480L);
    assertThat(raised.get(0).message())
        .containsSubsequence("top hat", "upper", "sinking 40 °C/h", "the flame at every burner")
        .contains("do not relight");
  }

  /** Whoever turns to reduction waits; a fire that goes on lying flat is told nevertheless. */
  @ParameterizedTest
  @CsvSource({
    "900, 0, CLIMB_STALLED, 1800, 2700",
    "700, 0, CLIMB_STALLED, 600, 1200",
    "900, -30, SAGGING, 1200, 2100",
    "900, -90, SAGGING, 240, 900"
  })
  void climbThatGoesAtOnceIsToldLaterInTheHeatOfBodyReduction(
      double atC, double thenCPerHour, AlarmKind kind, long earliestS, long latestS) {
    int turnS = (int) ((atC - 20) / 110 * 3600);
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(110, turnS)
            .climb(thenCPerHour, 3600);

    Event.AlarmChanged first = raised(script).get(0);

    assertThat(first.kind()).isEqualTo(kind);
    assertThat(first.at().millis() / 1000 - turnS).isBetween(earliestS, latestS);
  }

  /** The patience runs by the clock, not by the readings that were had. */
  @Test
  void patienceIsOverBehindAProbeThatFailedMeanwhile() {
    int turnS = (int) (880 / 110.0 * 3600);
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(110, turnS)
            .climb(0, 120)
            .faulty(Fault.OPEN_CIRCUIT, 1500)
            .climb(0, 1800);

    assertThat(raised(script))
        .filteredOn(one -> one.kind() == AlarmKind.CLIMB_STALLED)
        .singleElement()
        .satisfies(one -> assertThat(one.at().millis() / 1000 - turnS).isBetween(2200L, 2700L));
  }

  @Test
  void patienceOutlastsARestartOfTheProgram() {
    int turnS = (int) (880 / 110.0 * 3600);
    Script script =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(110, turnS)
            .climb(0, 300)
            .deed(at -> new Input.Resumed(at, Duration.ZERO))
            .climb(0, 3600);

    assertThat(raised(script).get(0).at().millis() / 1000 - turnS).isBetween(1800L, 2700L);
  }

  @Test
  void oneCauseIsOneAlarmAtItsWorst() {
    Script script = climbing();
    for (int minute = 0; minute < 120; minute++) {
      script.climb(150 * StrictMath.exp(-minute / 40.0), 60);
    }
    script.climb(0, 1200).climb(-90, 900).climb(-1500, 300);

    assertThat(alarms(script))
        .extracting(one -> one.kind() + " " + one.alarmState())
        .containsExactly(
            "STALL_AHEAD UNACKNOWLEDGED",
            "CLIMB_STALLED UNACKNOWLEDGED",
            "STALL_AHEAD NORMAL",
            "SAGGING UNACKNOWLEDGED",
            "CLIMB_STALLED NORMAL",
            "FALLING UNACKNOWLEDGED",
            "SAGGING NORMAL");
    assertThat(alarms(script))
        .filteredOn(one -> one.alarmState() == AlarmState.NORMAL)
        .allSatisfy(one -> assertThat(one.message()).startsWith("Now said by \""));
  }

  /** Somebody who wants no word of the fall while drawing ware still hears of a stall. */
  @Test
  void shelvedAlarmSpeaksForNoOther() {
    Script script =
        climbing().deed(at -> new Input.Shelved(at, "sagging", anHour())).climb(-40, 1200);

    assertThat(raised(script))
        .extracting(Event.AlarmChanged::kind)
        .containsExactly(AlarmKind.CLIMB_STALLED);
  }

  /** Somebody who has seen the fall and puts it aside is not rung at once for less of the same. */
  @Test
  void whatWasSeenAndShelvedKeepsTheWeakerQuiet() {
    Script script =
        climbing()
            .climb(-400, 300)
            .deed(at -> new Input.Acknowledged(at, "falling", Signature.NOBODY))
            .deed(at -> new Input.Shelved(at, "falling", anHour()))
            .climb(-300, 1200);

    assertThat(raised(script))
        .extracting(Event.AlarmChanged::kind)
        .containsExactly(AlarmKind.FALLING);
  }

  /** Its shelf speaks for the fall that was seen, and for no other. */
  @Test
  void whatComesAfterTheShelvedCauseIsOverIsSaid() {
    Script script =
        climbing()
            .climb(-400, 300)
            .deed(at -> new Input.Acknowledged(at, "falling", Signature.NOBODY))
            .deed(at -> new Input.Shelved(at, "falling", anHour()))
            .climb(300, 900)
            .climb(-40, 1500);

    assertThat(raised(script))
        .extracting(Event.AlarmChanged::kind)
        .contains(AlarmKind.FALLING)
        .containsAnyOf(AlarmKind.CLIMB_STALLED, AlarmKind.SAGGING);
  }

  private static Shelving anHour() {
    return new Shelving(Duration.ofHours(1), Signature.NOBODY);
  }

  @ParameterizedTest
  @CsvSource({
    "40, 600", // a damper turned, or gas taken back
    "-20, 300", // a turn to reduction: a dip of minutes
    "-60, 240",
    "-100, 120"
  })
  void damperGasAndTurnToReductionAreNoFall(double cPerHour, int seconds) {
    assertThat(raised(climbing().climb(cPerHour, seconds).climb(90, 3600))).isEmpty();
  }

  @Test
  void doorOpenedAtTheTargetToDrawWareIsNoLostFlame() {
    Script script = climbing().climb(490, 3600);
    for (int ware = 0; ware < 4; ware++) {
      script.climb(-5000, 60).climb(1250, 240);
    }

    assertThat(raised(script))
        .extracting(Event.AlarmChanged::kind)
        .doesNotContain(AlarmKind.FALLING, AlarmKind.SAGGING);
  }

  @Test
  void fallThatGoesOnAtTheTargetIsTold() {
    List<Event.AlarmChanged> raised = raised(climbing().climb(490, 3600).climb(-800, 600));

    assertThat(raised).extracting(Event.AlarmChanged::kind).contains(AlarmKind.FALLING);
  }

  @Test
  void gasOffByThePottersWordIsNoFall() {
    Script script = climbing().deed(at -> new Input.Declared(at, Phase.COOLING)).climb(-500, 1800);

    assertThat(raised(script)).isEmpty();
  }

  private static Script climbing() {
    return new Script(20).deed(at -> new Input.Began(at, "")).climb(150, OUT_AT_S);
  }

  private static List<Event.AlarmChanged> alarms(Script script) {
    return script.events().stream()
        .filter(Event.AlarmChanged.class::isInstance)
        .map(Event.AlarmChanged.class::cast)
        .toList();
  }

  private static List<Event.AlarmChanged> raised(Script script) {
    return alarms(script).stream()
        .filter(one -> one.alarmState() == AlarmState.UNACKNOWLEDGED)
        .toList();
  }
}
