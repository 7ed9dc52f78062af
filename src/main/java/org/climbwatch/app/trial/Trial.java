package org.climbwatch.app.trial;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.function.UnaryOperator;
import org.climbwatch.alarm.AlarmState;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.RecordedEvent;
import org.climbwatch.journal.SettingsCodec;
import org.climbwatch.reading.Moment;
import org.climbwatch.watch.Event;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;

/**
 * A recorded firing run through the core once more, under other settings: what would have been
 * raised, beside what was.
 */
public final class Trial {
  private static final String RAISED = AlarmState.UNACKNOWLEDGED.word();

  private final UnaryOperator<WatchSettings> change;
  private final ToLongFunction<Moment> elapsedMs;
  private final Set<String> seen = new HashSet<>();
  private final List<Fired> fired = new ArrayList<>();
  private Watch watch;

  private Trial(UnaryOperator<WatchSettings> change, ToLongFunction<Moment> elapsedMs) {
    this.change = change;
    this.elapsedMs = elapsedMs;
  }

  /**
   * Compares a firing with itself under other settings.
   *
   * @param codec reads the settings that were in force
   * @param change makes the settings under trial of those that were in force
   * @param atEach called before each input; what it throws ends the run
   */
  public static List<Difference> run(
      Firings firings,
      long id,
      SettingsCodec codec,
      UnaryOperator<WatchSettings> change,
      Runnable atEach) {
    Trial trial = new Trial(change, firings.elapsedMs(id));
    firings.inputs(
        id,
        codec,
        input -> {
          atEach.run();
          trial.take(input);
        });
    return Difference.between(recorded(firings.events(id)), trial.fired);
  }

  /** What the core announces of a run of inputs under the settings of a watch. */
  public static List<Fired> fired(Watch watch, Iterable<Input> inputs) {
    Trial trial = new Trial(UnaryOperator.identity(), Moment::millis);
    trial.watch = watch;
    inputs.forEach(trial::take);
    return trial.fired;
  }

  private static List<Fired> recorded(List<RecordedEvent> events) {
    Set<String> seen = new HashSet<>();
    List<Fired> fired = new ArrayList<>();
    for (RecordedEvent event : events) {
      String occurrence = event.alarmId().orElse("");
      if (event.state().equals(RAISED) && !occurrence.isEmpty() && seen.add(occurrence)) {
        fired.add(new Fired(Fired.alarmOf(occurrence), event.elapsedMs(), event.message()));
      }
    }
    return fired;
  }

  private void take(Input input) {
    Input changed = changed(input);
    if (watch == null) {
      if (!(changed instanceof Input.Configured configured)) {
        throw new IllegalStateException("the record has no settings before its first input");
      }
      watch = new Watch(configured.settings());
    }
    for (Event event : watch.accept(changed).events()) {
      long atMs = elapsedMs.applyAsLong(event.at());
      if (event instanceof Event.AlarmChanged alarm
          && alarm.alarmState() == AlarmState.UNACKNOWLEDGED
          && seen.add(alarm.id())
          && atMs >= 0) {
        fired.add(new Fired(Fired.alarmOf(alarm.id()), atMs, alarm.message()));
      }
    }
  }

  /** Settings are changed; an answer is meant for the alarm, whenever that is raised now. */
  private Input changed(Input input) {
    if (input instanceof Input.Configured configured) {
      return new Input.Configured(configured.at(), change.apply(configured.settings()));
    }
    if (input instanceof Input.Acknowledged answer) {
      return new Input.Acknowledged(answer.at(), Fired.alarmOf(answer.alarmId()), answer.by());
    } else if (input instanceof Input.Shelved shelved) {
      return new Input.Shelved(shelved.at(), Fired.alarmOf(shelved.alarmId()), shelved.shelving());
    } else if (input instanceof Input.Unshelved unshelved) {
      return new Input.Unshelved(
          unshelved.at(), Fired.alarmOf(unshelved.alarmId()), unshelved.by());
    }
    return input instanceof Input.Reset reset
        ? new Input.Reset(reset.at(), Fired.alarmOf(reset.alarmId()), reset.by())
        : input;
  }
}
