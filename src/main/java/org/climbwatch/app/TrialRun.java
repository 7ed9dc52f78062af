package org.climbwatch.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.trial.Difference;
import org.climbwatch.app.trial.Fired;
import org.climbwatch.app.trial.Trial;
import org.climbwatch.app.trial.TrialReport;
import org.climbwatch.journal.FiringSummary;
import org.climbwatch.journal.Firings;
import org.climbwatch.source.recorded.Recording;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;

/** Tries the settings of a configuration on recordings or on firings of the journal. */
final class TrialRun {
  private final Configuration configuration;

  TrialRun(Configuration configuration) {
    this.configuration = configuration;
  }

  /**
   * Firings against their own record: probes stay as they were, target, climb, stages and alarms
   * are those under trial.
   *
   * @param which their numbers, or {@code all}
   */
  List<TrialReport.Tried> firings(Path journal, List<String> which) {
    List<FiringSummary> chosen;
    try (Firings firings = Firings.open(journal)) {
      chosen = chosen(firings.list(), which);
    }
    FiringTrial trial = new FiringTrial(journal, configuration.watch());
    try (Progress progress = new Progress("tried", "firings", 1)) {
      // each firing follows from its own inputs alone, so that they can go side by side
      return chosen.parallelStream()
          .map(
              firing -> {
                TrialReport.Tried tried = trial.of(firing, () -> {});
                progress.one();
                return tried;
              })
          .toList();
    }
  }

  /** Recordings under these settings against the same under others. */
  List<TrialReport.Tried> recordings(List<Path> files, Optional<Path> against) throws IOException {
    WatchSettings trial = configuration.watch();
    WatchSettings base =
        against.isPresent() ? Configuration.load(against.get()).watch() : withDefaults(trial);
    List<TrialReport.Tried> all = new ArrayList<>();
    try (Progress progress = new Progress("tried", "recordings", 1)) {
      for (Path file : files) {
        List<Difference> differences = Difference.between(fired(file, base), fired(file, trial));
        all.add(new TrialReport.Tried(file.getFileName().toString(), "", differences));
        progress.one();
      }
    }
    return all;
  }

  private static WatchSettings withDefaults(WatchSettings trial) {
    return new WatchSettings(
        trial.kiln(),
        trial.targetC(),
        trial.probes(),
        org.climbwatch.signal.SignalSettings.DEFAULT,
        org.climbwatch.firing.FiringSettings.DEFAULT,
        org.climbwatch.alarm.AlarmSettings.DEFAULT);
  }

  private static List<Fired> fired(Path file, WatchSettings settings) {
    try (Recording recording = new Recording(file, settings.probeNames())) {
      Iterable<Input> inputs = () -> new Rows(recording);
      return Trial.fired(new Watch(settings), inputs);
    }
  }

  private static final class Rows implements java.util.Iterator<Input> {
    private final Recording recording;
    private Optional<Input> next;

    Rows(Recording recording) {
      this.recording = recording;
      next = recording.next();
    }

    @Override
    public boolean hasNext() {
      return next.isPresent();
    }

    @Override
    public Input next() {
      Input input = next.orElseThrow();
      next = recording.next();
      return input;
    }
  }

  private static List<FiringSummary> chosen(List<FiringSummary> all, List<String> which) {
    if (which.equals(List.of("all"))) {
      return all;
    }
    List<FiringSummary> chosen = new ArrayList<>();
    for (String word : which) {
      chosen.add(
          all.stream()
              .filter(firing -> Long.toString(firing.id()).equals(word.strip()))
              .findFirst()
              .orElseThrow(
                  () ->
                      new Refusal(
                          "there is no firing \""
                              + word
                              + "\"; `"
                              + Called.name()
                              + " firings` lists them, or write all")));
    }
    return chosen;
  }
}
