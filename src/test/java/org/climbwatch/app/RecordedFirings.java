package org.climbwatch.app;

import java.nio.file.Path;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.firing.Phase;
import org.climbwatch.journal.Journal;
import org.climbwatch.reading.Moment;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.source.simulated.FiringKind;
import org.climbwatch.source.simulated.SimulatedSource;
import org.climbwatch.source.simulated.SimulationSettings;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.watch.Watch;

/** A real journal with firings of the kiln model, watched by the real core under given settings. */
public final class RecordedFirings implements AutoCloseable {
  private static final long WALL_MS = 1_767_286_800_000L;

  private final Watch watch;
  private final Journal journal;
  private final int boot;
  private long nowMs;

  /**
   * @param toml the settings that the kiln is watched with
   */
  public RecordedFirings(String toml, Path journalFile) {
    Configuration configuration = Configuration.ofText("base.toml", toml);
    watch = new Watch(configuration.watch());
    journal = Journal.open(journalFile, new TextCodec());
    boot = journal.boot("boot-a", 0, WALL_MS);
    deed(new Input.Configured(now(), configuration.watch()));
  }

  /** Two stoneware firings: 1 stalls and the potter answers each alarm, 2 goes well. */
  public static void stalledThenHealthy(String toml, Path journalFile) {
    try (RecordedFirings recorded = new RecordedFirings(toml, journalFile)) {
      recorded.firing("stoneware STALL", FaultKind.STALL);
      recorded.firing("stoneware NONE", FaultKind.NONE);
    }
  }

  /** Nine hours at one reading a second, from lighting to the potter's word that it is over. */
  public void firing(String name, FaultKind fault) {
    begin(name, fault, 9 * 3600);
    deed(new Input.Declared(now(), Phase.COOLING));
    deed(new Input.Ended(now()));
  }

  /** The same, for some seconds and not over. */
  public void begin(String name, FaultKind fault, int seconds) {
    var source =
        new SimulatedSource("probe", new SimulationSettings(FiringKind.STONEWARE, 3, fault), nowMs);
    deed(new Input.Began(now(), name));
    for (int second = 0; second < seconds; second++, nowMs += 1000) {
      Input input = new Input.Measured(source.read(now()).orElseThrow());
      Outcome outcome = watch.accept(input);
      if (outcome.events().isEmpty()) {
        journal.append(outcome.judged().orElseThrow());
      } else {
        journal.announce(outcome.judged().orElseThrow(), outcome.events());
        watch.view().alarms().stream()
            .findFirst()
            .ifPresent(alarm -> deed(new Input.Acknowledged(now(), alarm.id(), "Ann")));
      }
    }
  }

  private Moment now() {
    return new Moment(boot, nowMs);
  }

  private void deed(Input input) {
    Outcome outcome = watch.accept(input);
    journal.record(input, outcome.events());
  }

  @Override
  public void close() {
    journal.close();
  }
}
