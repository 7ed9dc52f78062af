package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.alarm.Delays;
import org.climbwatch.alarm.RuleSettings;
import org.climbwatch.alarm.Shelving;
import org.climbwatch.alarm.Signature;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;

/** What the potter does about alarms, through the whole core. */
class AlarmDeedsTest {
  private static final Signature ANN = new Signature("Ann", "bottle being changed");

  private final Watch watch = new Watch(Script.SETTINGS);
  private final Script script = new Script(20);
  private final List<Event> events = new ArrayList<>();
  private int done;

  private void play() {
    List<Input> inputs = script.inputs();
    events.clear();
    events.addAll(Script.eventsOf(watch, inputs.subList(done, inputs.size())));
    done = inputs.size();
  }

  private static Shelving minutes(long minutes) {
    return new Shelving(Duration.ofMinutes(minutes), ANN);
  }

  private View.StandingAlarm only() {
    assertThat(watch.view().alarms()).hasSize(1);
    return watch.view().alarms().get(0);
  }

  private AlarmState stateOf(AlarmKind kind) {
    return watch.view().watched().stream()
        .filter(one -> one.kind() == kind)
        .findFirst()
        .orElseThrow()
        .state();
  }

  @Test
  void viewSaysWhoHasShelvedAnAlarmAndUntilWhen() {
    script.faulty(Fault.OPEN_CIRCUIT, 20);
    script.deed(at -> new Input.Shelved(at, "probe_fault", minutes(30))).climb(0, 1);
    play();

    assertThat(only().state()).isEqualTo(AlarmState.SHELVED);
    assertThat(only().shelvedUntil()).contains(new Moment(0, 20_000 + 1_800_000));
    assertThat(only().by()).isEqualTo(ANN);
  }

  /** A cold kiln keeps one reading a minute; the one at which a shelving ends is kept, too. */
  @Test
  void shelvingEndsOnTheSecondAlsoWhileColdAndIdle() {
    script.climb(0, 601).deed(at -> new Input.Shelved(at, "falling", minutes(5))).climb(0, 300);
    play();
    assertThat(only().state()).isEqualTo(AlarmState.SHELVED);

    script.climb(0, 1);
    play();

    assertThat(watch.view().alarms()).isEmpty();
    assertThat(events).extracting(Event::state).containsExactly("normal");
  }

  @Test
  void shelvedOverARebootForWhatIsLeft() {
    script.faulty(Fault.OPEN_CIRCUIT, 20);
    script.deed(at -> new Input.Shelved(at, "probe_fault", minutes(30)));
    script.faulty(Fault.OPEN_CIRCUIT, 600).reboot(Duration.ofMinutes(5));
    script.faulty(Fault.OPEN_CIRCUIT, 60);
    play();
    assertThat(only().state()).isEqualTo(AlarmState.SHELVED);

    script.faulty(Fault.OPEN_CIRCUIT, 15 * 60);
    play();

    assertThat(only().state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void unansweredAlarmIsSaidAgainAsAnEventOfItsOwn() {
    script.faulty(Fault.OPEN_CIRCUIT, 400);
    play();

    assertThat(events)
        .extracting(event -> event.event() + " " + event.state())
        .containsExactly("alarm unacknowledged", "reminder unacknowledged");
    assertThat(events.get(1).message()).startsWith("Still not acknowledged after 5 min. top hat");
  }

  @Test
  void ruleThatIsSwitchedOffIsOutOfServiceAtOnceAndWhatWasAnsweredIsOver() {
    script.faulty(Fault.OPEN_CIRCUIT, 20);
    script.deed(at -> new Input.Acknowledged(at, "probe_fault", ANN));
    script.deed(at -> new Input.Configured(at, without(AlarmKind.PROBE_FAULT)));
    play();

    assertThat(watch.view().alarms()).isEmpty();
    assertThat(stateOf(AlarmKind.PROBE_FAULT)).isEqualTo(AlarmState.OUT_OF_SERVICE);
    assertThat(events)
        .extracting(Event::state)
        .containsExactly("unacknowledged", "acknowledged", "normal");

    script.deed(at -> new Input.Shelved(at, "probe_fault", minutes(5)));
    play();
    assertThat(events).isEmpty();
  }

  @Test
  void ruleThatDoesNotApplyInAPhaseIsSuppressedByDesign() {
    script.climb(0, 61);
    play();

    assertThat(stateOf(AlarmKind.CLIMB_STALLED)).isEqualTo(AlarmState.SUPPRESSED_BY_DESIGN);
    assertThat(stateOf(AlarmKind.OVER_TEMPERATURE)).isEqualTo(AlarmState.NORMAL);
  }

  /** Recovered by itself and answered: it still waits for somebody to have looked. */
  @Test
  void lostFlameStaysLatchedUntilItIsReset() {
    script.deed(at -> new Input.Began(at, "")).climb(200, 4 * 3600).climb(-1500, 120);
    script.climb(400, 600).deed(at -> new Input.Acknowledged(at, "falling", ANN)).climb(200, 60);
    play();
    assertThat(only().state()).isEqualTo(AlarmState.LATCHED);
    assertThat(only().by()).isEqualTo(ANN);

    script.deed(at -> new Input.Reset(at, "falling", ANN));
    play();

    assertThat(watch.view().alarms()).isEmpty();
    assertThat(events).extracting(Event::state).containsExactly("normal");
  }

  private static WatchSettings without(AlarmKind kind) {
    WatchSettings usual = Script.SETTINGS;
    AlarmSettings alarm =
        usual.alarm().with(new RuleSettings(kind, false, Map.of(), Delays.ofSeconds(10, 10)));
    return new WatchSettings(
        usual.kiln(), usual.targetC(), usual.probe(), usual.signal(), usual.firing(), alarm);
  }
}
