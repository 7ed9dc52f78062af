package org.climbwatch.app;

import java.nio.file.Path;
import java.util.function.UnaryOperator;
import org.climbwatch.app.trial.Trial;
import org.climbwatch.app.trial.TrialReport;
import org.climbwatch.journal.FiringSummary;
import org.climbwatch.journal.Firings;
import org.climbwatch.watch.WatchSettings;

/**
 * A firing of the journal against its own record: probes stay as they were, target, climb, stages
 * and alarms are those under trial.
 */
record FiringTrial(Path journal, WatchSettings settings) {
  /**
   * Runs through one firing.
   *
   * @param atEach called before each input; what it throws ends the run
   */
  TrialReport.Tried of(FiringSummary firing, Runnable atEach) {
    UnaryOperator<WatchSettings> change = then -> settings.with(then.kiln(), then.probes());
    try (Firings firings = Firings.open(journal)) {
      return new TrialReport.Tried(
          Long.toString(firing.id()),
          firing.name(),
          Trial.run(firings, firing.id(), new TextCodec(), change, atEach));
    }
  }
}
