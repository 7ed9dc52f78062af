package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.junit.jupiter.api.Test;

/** One kiln with three probes: the upper one is followed, that in the flue rightly differs. */
class SeveralProbesTest {
  private final List<Event> events = new ArrayList<>();
  private final List<Input> inputs = new ArrayList<>();
  private Watch watch = new Watch(settings("upper", "lower", "flue"));
  private int second;
  private double upperC = 300;

  private static WatchSettings settings(String... names) {
    List<ProbeSettings> probes = new ArrayList<>();
    for (String name : names) {
      probes.add(
          new ProbeSettings(
              name,
              ThermocoupleType.K,
              ToleranceClass.IEC_2,
              2,
              2,
              !name.equals("flue"),
              OptionalDouble.empty()));
    }
    WatchSettings one = Script.SETTINGS;
    return new WatchSettings(
        one.kiln(), one.targetC(), probes, one.signal(), one.firing(), one.alarm());
  }

  private void put(Input input) {
    inputs.add(input);
    events.addAll(watch.accept(input).events());
  }

  private Moment now() {
    return new Moment(0, second * 1000L);
  }

  private Input look(String probe, double temperatureC) {
    return new Input.Measured(
        Reading.linearised(now(), probe, temperatureC, OptionalDouble.of(25)));
  }

  private void climb(int seconds, double lowerOffsetC) {
    for (int end = second + seconds; second < end; second++, upperC += 150 / 3600.0) {
      put(look("upper", upperC));
      put(look("lower", upperC + lowerOffsetC));
      put(look("flue", upperC + 200));
    }
  }

  private List<Event.AlarmChanged> alarms(AlarmKind kind) {
    return events.stream()
        .filter(event -> event instanceof Event.AlarmChanged)
        .map(event -> (Event.AlarmChanged) event)
        .filter(alarm -> alarm.kind() == kind)
        .toList();
  }

  private void begin() {
    put(new Input.Began(now(), "stoneware"));
  }

  @Test
  void eachProbeIsShownAndTheFirstIsFollowed() {
    begin();
    climb(600, -15);

    View view = watch.view();
    assertThat(view.probes())
        .extracting(View.ProbeView::name)
        .containsExactly("upper", "lower", "flue");
    assertThat(view.latest().orElseThrow().reading().probe()).isEqualTo("upper");
    assertThat(view.probes().get(2).latest().orElseThrow().climb().orElseThrow().cPerHour())
        .isBetween(140.0, 160.0);
    assertThat(view.alarms()).isEmpty();
  }

  @Test
  void theFluesHeatNeitherMovesThePhaseNorCountsAsOverTemperature() {
    begin();
    upperC = 1150;
    climb(900, -10); // the flue is at 1350 then, over the limit of 1300

    assertThat(alarms(AlarmKind.OVER_TEMPERATURE)).isEmpty();
    assertThat(watch.view().phase()).isEqualTo(Phase.CLIMBING);
  }

  @Test
  void aProbeThatIsNotFollowedStillReportsItsFaultUnderItsOwnName() {
    begin();
    climb(60, -15);
    for (int i = 0; i < 30; i++, second++) {
      put(look("upper", upperC));
      put(new Input.Measured(Reading.faulty(now(), "lower", Fault.OPEN_CIRCUIT)));
    }

    assertThat(alarms(AlarmKind.PROBE_FAULT)).hasSize(1);
    Event.AlarmChanged fault = alarms(AlarmKind.PROBE_FAULT).get(0);
    assertThat(fault.probe()).isEqualTo("lower");
    assertThat(fault.message()).contains("lower");
    assertThat(fault.id()).endsWith("-lower");

    put(new Input.Acknowledged(now(), "probe_fault-lower", "Ann"));
    assertThat(watch.view().alarms().get(0).state()).isEqualTo(AlarmState.ACKNOWLEDGED);
  }

  @Test
  void theSameAlarmOfTwoProbesIsTwoAlarms() {
    begin();
    climb(60, -15);
    for (int i = 0; i < 30; i++, second++) {
      put(new Input.Measured(Reading.faulty(now(), "upper", Fault.OPEN_CIRCUIT)));
      put(new Input.Measured(Reading.faulty(now(), "lower", Fault.OPEN_CIRCUIT)));
    }

    assertThat(watch.view().alarms()).extracting(View.StandingAlarm::id).doesNotHaveDuplicates();
    put(new Input.Acknowledged(now(), watch.view().alarms().get(1).id(), ""));
    assertThat(watch.view().alarms())
        .extracting(View.StandingAlarm::state)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.ACKNOWLEDGED);
  }

  @Test
  void probesThatDriftApartAlarmAndTheFlueIsLeftOutOfIt() {
    begin();
    climb(900, -15);
    assertThat(alarms(AlarmKind.PROBES_APART)).isEmpty();

    climb(400, -120);

    Event.AlarmChanged apart = alarms(AlarmKind.PROBES_APART).get(0);
    assertThat(apart.message()).contains("lower").contains("120 °C apart").doesNotContain("flue");
  }

  /** The one that went first was known and answered; it hid the other for the whole firing. */
  @Test
  void anAnswerForOneProbeThatIsApartHidesNoOther() {
    watch = new Watch(settings("upper", "lower", "middle"));
    begin();
    drift(400, -90, 0);
    put(new Input.Acknowledged(now(), "probes_apart-lower", "Ann"));
    drift(200, -90, 0);
    assertThat(alarms(AlarmKind.PROBES_APART)).hasSize(2);

    drift(310, -90, 130);

    assertThat(alarms(AlarmKind.PROBES_APART)).hasSize(3);
    Event.AlarmChanged middle = alarms(AlarmKind.PROBES_APART).get(2);
    assertThat(middle.probe()).isEqualTo("middle");
    assertThat(middle.id()).endsWith("-middle");
    assertThat(middle.message()).contains("probe middle").contains("130 °C apart for 5 min");
    assertThat(watch.view().alarms())
        .filteredOn(alarm -> alarm.kind() == AlarmKind.PROBES_APART)
        .extracting(View.StandingAlarm::state)
        .containsExactly(AlarmState.ACKNOWLEDGED, AlarmState.UNACKNOWLEDGED);
  }

  /** Nobody would ever look at it again. */
  @Test
  void anAlarmOfAProbeThatIsNowFollowedIsNoLongerLookedAt() {
    begin();
    climb(400, -120);
    put(new Input.Configured(now(), settings("lower", "upper")));
    climb(2, -120);

    assertThat(alarms(AlarmKind.PROBES_APART))
        .extracting(Event.AlarmChanged::alarmState)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.RETURNED_UNACKNOWLEDGED);
    assertThat(alarms(AlarmKind.PROBES_APART).get(1).message()).startsWith("No longer looked at.");
  }

  private void drift(int seconds, double lowerOffsetC, double middleOffsetC) {
    for (int end = second + seconds; second < end; second++, upperC += 150 / 3600.0) {
      put(look("upper", upperC));
      put(look("lower", upperC + lowerOffsetC));
      put(look("middle", upperC + middleOffsetC));
    }
  }

  @Test
  void aProbeThatSaysNothingIsNotCompared() {
    begin();
    climb(100, -120);
    for (int i = 0; i < 600; i++, second++) {
      put(look("upper", upperC));
      put(new Input.Measured(Reading.faulty(now(), "lower", Fault.NO_ANSWER)));
    }

    assertThat(alarms(AlarmKind.PROBES_APART)).isEmpty();
  }

  @Test
  void aProbeThatIsTakenOutTakesItsAlarmWithItAndSaysSo() {
    begin();
    for (int i = 0; i < 30; i++, second++) {
      put(new Input.Measured(Reading.faulty(now(), "lower", Fault.OPEN_CIRCUIT)));
    }
    put(new Input.Configured(now(), settings("upper", "flue")));

    assertThat(alarms(AlarmKind.PROBE_FAULT))
        .extracting(Event.AlarmChanged::alarmState)
        .containsExactly(AlarmState.UNACKNOWLEDGED, AlarmState.NORMAL);
    assertThat(watch.view().alarms()).isEmpty();
  }

  @Test
  void keptInputsAloneLeadToTheSameStateAlsoWhileIdle() {
    List<Input> kept = new ArrayList<>();
    upperC = 20;
    for (int s = 0; s < 4000; s++, second++) {
      for (String probe : List.of("upper", "lower", "flue")) {
        Input input = look(probe, upperC + (s > 3000 ? (s - 3000) / 20.0 : 0));
        Outcome outcome = watch.accept(input);
        events.addAll(outcome.events());
        if (outcome.kept()) {
          kept.add(input);
        }
      }
    }
    Watch again = new Watch(settings("upper", "lower", "flue"));
    List<Event> eventsAgain = new ArrayList<>();
    kept.forEach(input -> eventsAgain.addAll(again.accept(input).events()));

    assertThat(eventsAgain).isEqualTo(events).isNotEmpty();
    assertThat(kept.size()).isLessThan(4000);
  }

  /** Whatever the settings were before: the name without a dash is the followed probe's. */
  @Test
  void anAlarmIsNamedByTheProbeThatIsFollowedNow() {
    put(new Input.Configured(now(), settings("lower", "upper")));

    assertThat(watch.view().watched())
        .isEqualTo(new Watch(settings("lower", "upper")).view().watched());
  }
}
