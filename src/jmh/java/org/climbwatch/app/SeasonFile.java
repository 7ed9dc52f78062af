package org.climbwatch.app;

import java.nio.file.Path;
import java.util.OptionalDouble;
import org.climbwatch.alarm.AlarmSettings;
import org.climbwatch.firing.FiringSettings;
import org.climbwatch.journal.Journal;
import org.climbwatch.reading.Moment;
import org.climbwatch.signal.SignalSettings;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.source.simulated.FiringKind;
import org.climbwatch.source.simulated.SimulatedSource;
import org.climbwatch.source.simulated.SimulationSettings;
import org.climbwatch.thermocouple.ThermocoupleType;
import org.climbwatch.thermocouple.ToleranceClass;
import org.climbwatch.watch.Input;
import org.climbwatch.watch.Outcome;
import org.climbwatch.watch.ProbeSettings;
import org.climbwatch.watch.Watch;
import org.climbwatch.watch.WatchSettings;

/**
 * Makes the journal of a season, 200 firings of the model of 10 h at 1 reading/s, to time a trial:
 *
 * <pre>
 *   mvn -q -o -Pjmh test-compile exec:java \
 *       -Dexec.mainClass=org.climbwatch.app.SeasonFile -Dexec.args=FOLDER/journal.sqlite
 *   time java -jar target/climbwatch.jar replay --firings all --data FOLDER --config SETTINGS.toml
 * </pre>
 */
public final class SeasonFile {
  private static final int FIRINGS = 200;
  private static final int SECONDS = 36_000;
  private static final long WALL_MS = 1_790_000_000_000L;

  private SeasonFile() {}

  public static void main(String[] arguments) {
    WatchSettings settings =
        new WatchSettings(
            "top hat",
            OptionalDouble.empty(),
            new ProbeSettings("upper", ThermocoupleType.K, ToleranceClass.IEC_2, 2, 1),
            SignalSettings.DEFAULT,
            FiringSettings.DEFAULT,
            AlarmSettings.DEFAULT);
    try (Journal journal = Journal.open(Path.of(arguments[0]), new TextCodec())) {
      journal.boot("season", 0, WALL_MS);
      Watch watch = new Watch(settings);
      deed(journal, watch, new Input.Configured(new Moment(0, 0), settings));
      for (int firing = 0; firing < FIRINGS; firing++) {
        fire(journal, watch, firing);
      }
    }
  }

  private static void fire(Journal journal, Watch watch, int firing) {
    long fromMs = firing * 2L * SECONDS * 1000;
    FaultKind fault = firing % 5 == 4 ? FaultKind.STALL : FaultKind.NONE;
    SimulatedSource source =
        new SimulatedSource(
            "upper", new SimulationSettings(FiringKind.STONEWARE, firing + 1, fault), fromMs);
    deed(journal, watch, new Input.Began(new Moment(0, fromMs), "stoneware " + firing));
    for (int second = 0; second < SECONDS; second++) {
      Moment at = new Moment(0, fromMs + second * 1000L);
      Outcome outcome = watch.accept(new Input.Measured(source.read(at).orElseThrow()));
      if (outcome.events().isEmpty()) {
        journal.append(outcome.judged().orElseThrow());
      } else {
        journal.announce(outcome.judged().orElseThrow(), outcome.events());
      }
      if (second % 5_000 == 0) {
        journal.commit();
      }
    }
    deed(journal, watch, new Input.Ended(new Moment(0, fromMs + SECONDS * 1000L)));
  }

  private static void deed(Journal journal, Watch watch, Input input) {
    journal.record(input, watch.accept(input).events());
  }
}
