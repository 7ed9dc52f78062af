package org.climbwatch.app;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Judged;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;

/** A firing's inputs through the same core as in service, under other corrections. */
final class Recomputation {
  private final UnaryOperator<WatchSettings> change;
  private Watch watch;

  /**
   * @param change puts other corrections into the settings that were in force
   */
  Recomputation(UnaryOperator<WatchSettings> change) {
    this.change = change;
  }

  /** Takes the next input; gives what a reading comes to now. */
  Optional<Judged> take(Input input) {
    if (input instanceof Input.Configured then) {
      Input.Configured now = new Input.Configured(then.at(), change.apply(then.settings()));
      if (watch == null) {
        watch = new Watch(now.settings());
      }
      watch.accept(now);
      return Optional.empty();
    }
    // an answer belongs to an alarm that may not stand now, and changes no temperature
    return input instanceof Input.Acknowledged ? Optional.empty() : watch.accept(input).judged();
  }
}
