package org.climbwatch.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.junit.jupiter.api.Test;

/**
 * For how long a device is said to be silent: a source says nothing before its {@code silence_s}.
 */
class ReadingsStoppedTest {
  private static final int SILENCE_S = 20;

  @Test
  void theTimeCountsFromTheLastReadingAndNotFromWhenSilenceWasFound() {
    List<Input> inputs = silent(firing(), 340);

    List<String> messages = messages(Script.eventsOf(new Watch(Script.SETTINGS), inputs));

    assertThat(messages).hasSize(2);
    assertThat(messages.get(0)).contains("no reading arrives for 30 s.");
    assertThat(messages.get(1)).startsWith("Still").contains("no reading arrives for 5 min.");
  }

  @Test
  void aReadingThatCarriesAFaultIsOneThatArrived() {
    Script script = new Script(20).deed(at -> new Input.Began(at, "")).climb(150, 1200);
    List<Input> inputs = silent(script.faulty(Fault.OPEN_CIRCUIT, 600), 60);

    assertThat(messages(Script.eventsOf(new Watch(Script.SETTINGS), inputs)))
        .singleElement()
        .asString()
        .contains("no reading arrives for 30 s.");
  }

  /** Few readings are kept then, and none tells when the last one came. */
  @Test
  void withoutAFiringItIsALeastTime() {
    List<Input> inputs = silent(new Script(20).climb(0, 600), 60);

    assertThat(messages(Script.eventsOf(new Watch(Script.SETTINGS), inputs)))
        .singleElement()
        .asString()
        .contains("no reading arrives for at least 10 s.");
  }

  @Test
  void overARestartNobodyKnowsWhenTheLastReadingCame() {
    List<Input> inputs = silent(firing().reboot(), 60);

    assertThat(messages(Script.eventsOf(new Watch(Script.SETTINGS), inputs)))
        .singleElement()
        .asString()
        .contains("no reading arrives for at least 10 s.");
  }

  private static Script firing() {
    return new Script(20).deed(at -> new Input.Began(at, "")).climb(150, 1800);
  }

  /** The script, and behind it a device that says nothing any more. */
  private static List<Input> silent(Script script, int seconds) {
    List<Input> inputs = new ArrayList<>(script.inputs());
    Moment last = inputs.get(inputs.size() - 1).at();
    for (int s = SILENCE_S; s < seconds; s++) {
      Moment at = last.plusMillis(s * 1000L);
      inputs.add(new Input.Measured(Reading.faulty(at, "upper", Fault.NO_ANSWER)));
    }
    return inputs;
  }

  private static List<String> messages(List<Event> events) {
    return events.stream()
        .filter(event -> event.subject().equals(AlarmKind.READINGS_STOPPED.word()))
        .map(Event::message)
        .toList();
  }
}
