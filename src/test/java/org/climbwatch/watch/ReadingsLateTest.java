package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.Test;

/** Readings that the program itself did not take. */
class ReadingsLateTest {
  @Test
  void gapWithinOneRunIsToldOnceItIsOver() {
    Watch watch = new Watch(Script.SETTINGS);
    List<Event> events = Script.eventsOf(watch, climbThenSleep(300));

    assertThat(alarms(events)).containsExactly("READINGS_LATE UNACKNOWLEDGED");
    assertThat(watch.view().alarms().get(0).message()).contains("no reading for 5 min");
    Script.eventsOf(watch, List.of(measured(7200 + 301)));
    assertThat(watch.view().alarms())
        .extracting(View.StandingAlarm::state)
        .containsExactly(AlarmState.RETURNED_UNACKNOWLEDGED);
  }

  @Test
  void slowIntervalIsNotLate() {
    assertThat(alarms(Script.eventsOf(new Watch(Script.SETTINGS), climbThenSleep(44)))).isEmpty();
  }

  @Test
  void restartIsNotLate() {
    List<Input> inputs = climbThenSleep(300);
    inputs.add(inputs.size() - 1, new Input.Resumed(new Moment(0, 7_400_000)));

    assertThat(alarms(Script.eventsOf(new Watch(Script.SETTINGS), inputs))).isEmpty();
  }

  @Test
  void deviceThatSaysNothingIsAnotherMatter() {
    List<Event> events =
        new Script(20)
            .deed(at -> new Input.Began(at, ""))
            .climb(150, 7200)
            .faulty(Fault.NO_ANSWER, 300)
            .climb(150, 60)
            .events();

    assertThat(events)
        .filteredOn(Event.AlarmChanged.class::isInstance)
        .extracting(event -> ((Event.AlarmChanged) event).kind())
        .doesNotContain(AlarmKind.READINGS_LATE);
  }

  private static List<Input> climbThenSleep(int seconds) {
    Script script = new Script(20).deed(at -> new Input.Began(at, "")).climb(150, 7200);
    List<Input> inputs = new ArrayList<>(script.inputs());
    inputs.add(measured(7199 + seconds));
    return inputs;
  }

  private static Input measured(long second) {
    return new Input.Measured(
        Reading.linearised(new Moment(0, second * 1000), "upper", 320, OptionalDouble.of(25)));
  }

  private static List<String> alarms(List<Event> events) {
    return events.stream()
        .filter(Event.AlarmChanged.class::isInstance)
        .map(Event.AlarmChanged.class::cast)
        .map(one -> one.kind() + " " + one.alarmState())
        .toList();
  }
}
