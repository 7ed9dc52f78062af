package org.climbwatch.app.trial;

import java.util.List;
import java.util.function.ToLongFunction;
import java.util.function.UnaryOperator;
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
  /** The event's word; a reminder of an alarm that was there before is another. */
  private static final String ALARM = "alarm";

  private final UnaryOperator<WatchSettings> change;
  private final ToLongFunction<Moment> elapsedMs;
  private final Raised raised = new Raised();
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
    return Difference.between(recorded(firings.events(id)), trial.raised.all());
  }

  /** What the core announces of a run of inputs under the settings of a watch. */
  public static List<Fired> fired(Watch watch, Iterable<Input> inputs) {
    Trial trial = new Trial(UnaryOperator.identity(), Moment::millis);
    trial.watch = watch;
    inputs.forEach(trial::take);
    return trial.raised.all();
  }

  private static List<Fired> recorded(List<RecordedEvent> events) {
    Raised raised = new Raised();
    for (RecordedEvent event : events) {
      if (event.event().equals(ALARM) && event.alarmId().isPresent()) {
        raised.changed(event.alarmId().get(), event.state(), event.elapsedMs(), event.message());
      }
    }
    return raised.all();
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
      // what was raised before, and holds again in this firing, is said in it, too
      if (event instanceof Event.AlarmChanged alarm && atMs >= 0) {
        raised.changed(alarm.id(), alarm.alarmState().word(), atMs, alarm.message());
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
