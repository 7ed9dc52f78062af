package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Report;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;

/** What the program found out about its machine, as alarms with a life of their own. */
class MachineAlarmsTest {
  private static final String FULL =
      "the disk is full; free some space on it, the readings wait in memory";
  private static final Signature ANN = new Signature("Ann", "");

  private static Script firing() {
    return new Script(20).deed(at -> new Input.Began(at, "stoneware")).climb(150, 3600);
  }

  private static Script reports(Script script, Report report) {
    return script.deed(at -> new Input.Reported(at, report));
  }

  private static List<String> changes(List<Event> events) {
    return events.stream()
        .filter(Event.AlarmChanged.class::isInstance)
        .map(Event.AlarmChanged.class::cast)
        .map(one -> one.at().millis() / 1000 + " " + one.subject() + " " + one.state())
        .toList();
  }

  @Test
  void aDiskThatTakesNothingIsToldAfterHalfAMinuteAndReturnsAMinuteAfterItTakesAgain() {
    Script script = reports(firing(), new Report.Writing(FULL)).climb(150, 100);
    reports(script, new Report.Writing("")).climb(150, 100);

    List<Event> events = script.events();

    assertThat(changes(events))
        .containsExactly(
            "3630 storage_trouble unacknowledged", "3760 storage_trouble returned_unacknowledged");
    assertThat(events)
        .filteredOn(event -> event.state().equals("unacknowledged"))
        .extracting(Event::message)
        .singleElement()
        .asString()
        .startsWith("top hat, probe upper: nothing has reached the disk for 30 s: " + FULL + ".")
        .contains("watched as before", "power cut", "First leave program and machine running");
  }

  @Test
  void oneFailedMomentIsNoAlarm() {
    Script script = reports(firing(), new Report.Writing("another program has locked it"));
    reports(script.climb(150, 29), new Report.Writing("")).climb(150, 600);

    assertThat(changes(script.events())).isEmpty();
  }

  @Test
  void littleRoomIsToldWithItsMegabytesAlsoWhileNoFiringIsOn() {
    Script script = reports(new Script(20).climb(0, 10), new Report.FreeSpace(183)).climb(0, 300);

    List<Event> events = script.events();

    assertThat(changes(events)).hasSize(1);
    assertThat(events.get(0).subject()).isEqualTo("storage_low");
    assertThat(events.get(0).message()).contains("183 MB are free", "less than 200 MB");
  }

  @Test
  void enoughRoomIsNoAlarmAndRoomMadeEndsIt() {
    Script script = reports(firing(), new Report.FreeSpace(200)).climb(150, 300);
    assertThat(changes(script.events())).isEmpty();

    reports(script, new Report.FreeSpace(150)).climb(150, 100);
    reports(script, new Report.FreeSpace(9000)).climb(150, 100);
    assertThat(changes(script.events()))
        .containsExactly(
            "3930 storage_low unacknowledged", "4060 storage_low returned_unacknowledged");
  }

  /** One alarm for both would have been answered already. */
  @Test
  void aFullDiskIsToldAnewBehindAnAcknowledgedShortage() {
    Script script = reports(firing(), new Report.FreeSpace(3)).climb(150, 60);
    script.deed(at -> new Input.Acknowledged(at, "storage_low", ANN)).climb(150, 60);
    reports(script, new Report.Writing(FULL)).climb(150, 60);

    assertThat(changes(script.events()))
        .containsExactly(
            "3630 storage_low unacknowledged",
            "3660 storage_low acknowledged",
            "3750 storage_trouble unacknowledged");
  }

  @Test
  void aClockThatNothingHasSetIsToldAtOnceAndEndsWhenItIsSet() {
    Report doubt = new Report.Clock("the time service has not set it since the machine started");
    Script script = reports(firing(), doubt).climb(150, 60);
    reports(script, new Report.Clock("")).climb(150, 10);

    assertThat(changes(script.events()))
        .containsExactly(
            "3600 clock_untrusted unacknowledged", "3660 clock_untrusted returned_unacknowledged");
  }

  @Test
  void aJumpOfTheClockIsNewsForTenMinutesOfAFiring() {
    Script script = reports(firing(), new Report.ClockJump(-7500)).climb(150, 700);

    List<Event> events = script.events();

    assertThat(changes(events))
        .containsExactly(
            "3600 clock_untrusted unacknowledged", "4201 clock_untrusted returned_unacknowledged");
    assertThat(events)
        .extracting(Event::message)
        .anyMatch(message -> message.contains("it jumped back by 2 h 05 min"));
  }

  /** The first was answered, and went on being told for the second. */
  @Test
  void aSecondJumpIsToldAnewWhetherOrNotTheFirstIsAnswered() {
    Script script = reports(firing(), new Report.ClockJump(90)).climb(150, 20);
    reports(script, new Report.ClockJump(-7290)).climb(150, 20);
    script.deed(at -> new Input.Acknowledged(at, "clock_untrusted", ANN)).climb(150, 20);
    reports(script, new Report.ClockJump(61)).climb(150, 20);

    List<Event> events = script.events();

    assertThat(changes(events))
        .containsExactly(
            "3600 clock_untrusted unacknowledged",
            "3620 clock_untrusted unacknowledged",
            "3640 clock_untrusted acknowledged",
            "3660 clock_untrusted unacknowledged");
    assertThat(events)
        .filteredOn(event -> event.state().equals("unacknowledged"))
        .extracting(Event::message)
        .satisfiesExactly(
            first -> assertThat(first).contains("it jumped forward by 90 s"),
            second -> assertThat(second).contains("it jumped back by 2 h 01 min"),
            third -> assertThat(third).contains("it jumped forward by 61 s"));
  }

  /** A time service sets the clock by a large step and corrects itself by a small one. */
  @Test
  void aSmallStepBehindAJumpDoesNotEndTheNewsOfIt() {
    Script script = reports(firing(), new Report.ClockJump(-7200)).climb(150, 20);
    reports(script, new Report.ClockJump(10)).climb(150, 700);

    assertThat(changes(script.events()))
        .containsExactly(
            "3600 clock_untrusted unacknowledged", "4201 clock_untrusted returned_unacknowledged");
  }

  /** Nobody has put it right, and what was dated wrong stays so. */
  @Test
  void aJumpThatIsNoLongerNewsIsNotSaidToBeOver() {
    Script script = reports(firing(), new Report.ClockJump(-7500)).climb(150, 700);

    assertThat(script.events())
        .filteredOn(event -> event.state().equals("returned_unacknowledged"))
        .extracting(Event::message)
        .singleElement()
        .asString()
        .startsWith(
            "Nothing new of the clock. Dates that went wrong in the record stay wrong. It was:")
        .doesNotContain("No longer so");
  }

  @Test
  void aSmallJumpAndOneWhileNoFiringIsOnAreNone() {
    Script script = reports(firing(), new Report.ClockJump(59)).climb(150, 700);
    assertThat(changes(script.events())).isEmpty();

    Script idle = reports(new Script(20).climb(0, 10), new Report.ClockJump(86_400));
    idle.deed(at -> new Input.Began(at, "stoneware")).climb(150, 60);
    assertThat(changes(idle.events())).isEmpty();
  }

  @Test
  void itIsShelvedRemindedAndCarriedOverARestartLikeAnyOther() {
    Script script = reports(firing(), new Report.Writing(FULL)).climb(150, 400);
    script
        .deed(
            at ->
                new Input.Shelved(
                    at, "storage_trouble", new Shelving(Duration.ofSeconds(120), ANN)))
        .climb(150, 60)
        .reboot(Duration.ofSeconds(30))
        .climb(150, 60);

    Watch watch = new Watch(Script.SETTINGS);
    List<Event> events = Script.eventsOf(watch, script.inputs());

    assertThat(events)
        .filteredOn(event -> event.subject().equals("storage_trouble"))
        .extracting(event -> event.event() + " " + event.state())
        .containsExactly(
            "alarm unacknowledged",
            "reminder unacknowledged",
            "alarm shelved",
            "alarm unacknowledged");
    assertThat(watch.view().alarms())
        .extracting(View.StandingAlarm::kind, View.StandingAlarm::state)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(
                AlarmKind.STORAGE_TROUBLE, AlarmState.UNACKNOWLEDGED));
  }

  @Test
  void aReportChangesNoOtherEvent() {
    Script plain = firing().climb(0, 1200);
    List<Input> inputs = new ArrayList<>(plain.inputs());
    Moment at = inputs.get(4000).at();
    inputs.add(4000, new Input.Reported(at, new Report.FreeSpace(12_000)));
    inputs.add(4000, new Input.Reported(at, new Report.ClockJump(6)));

    assertThat(Script.eventsOf(new Watch(Script.SETTINGS), inputs)).isEqualTo(plain.events());
  }
}
