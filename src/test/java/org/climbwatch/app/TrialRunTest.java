package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.trial.Difference;
import org.climbwatch.app.trial.Difference.Verdict;
import org.climbwatch.app.trial.TrialReport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two recorded firings, one with a stall that the potter answered, tried under other settings. */
class TrialRunTest {
  private static final String BASE = "[kiln]\ntarget_c = 1270\n[[probe]]\nsource = \"model\"\n";

  @TempDir static Path folder;
  private static Path journalFile;

  @BeforeAll
  static void recordTwoFirings() {
    journalFile = folder.resolve("journal.sqlite");
    RecordedFirings.stalledThenHealthy(BASE, journalFile);
  }

  private static List<TrialReport.Tried> tried(String more) {
    return new TrialRun(Configuration.ofText("trial.toml", BASE + more))
        .firings(journalFile, List.of("all"));
  }

  private static List<Difference> stalls(TrialReport.Tried tried) {
    return tried.differences().stream()
        .filter(difference -> difference.alarm().equals("climb_stalled"))
        .toList();
  }

  @Test
  void theSameSettingsRaiseWhatWasRaised() {
    List<TrialReport.Tried> all = tried("");

    assertThat(all).extracting(TrialReport.Tried::firing).containsExactly("2", "1");
    assertThat(stalls(all.get(1))).isNotEmpty();
    for (TrialReport.Tried one : all) {
      assertThat(one.differences()).allMatch(each -> each.verdict() == Verdict.SAME);
    }
  }

  @Test
  void aShorterDelayComesEarlierByThatMuchAndASwitchedOffRuleIsGone() {
    Difference earlier = stalls(tried("[alarm.climb_stalled]\non_delay_s = 300\n").get(1)).get(0);
    assertThat(earlier.verdict()).isEqualTo(Verdict.EARLIER);
    assertThat(earlier.shiftMs()).isBetween(-310_000L, -290_000L);

    assertThat(stalls(tried("[alarm.climb_stalled]\nenabled = false\n").get(1)))
        .extracting(Difference::verdict)
        .containsOnly(Verdict.GONE);
  }

  @Test
  void aNervousRuleShowsWhatItWouldCryAtInAHealthyFiring() {
    TrialReport.Tried healthy = tried("[alarm.climb_stalled]\nleast_climb_c_per_h = 300\n").get(0);

    assertThat(stalls(healthy)).extracting(Difference::verdict).contains(Verdict.NEW);
  }

  @Test
  void recordingsAreComparedUnderTwoConfigurations() throws Exception {
    Path recording = folder.resolve("firing.csv");
    StringBuilder rows = new StringBuilder("elapsed_s,temperature_c\r\n");
    for (int s = 0; s < 6000; s++) {
      // a fired kiln flickers; what stands still to the bit is a fault of its own
      double flickerC = s % 2 * 0.2;
      rows.append(s).append(',').append(Math.min(900, 700 + s / 10.0) + flickerC).append("\r\n");
    }
    Files.writeString(recording, rows);
    Path against = folder.resolve("against.toml");
    Files.writeString(against, BASE + "[alarm.climb_stalled]\non_delay_s = 1200\n");

    TrialReport.Tried tried =
        new TrialRun(Configuration.ofText("trial.toml", BASE))
            .recordings(List.of(recording), Optional.of(against))
            .get(0);

    assertThat(tried.firing()).isEqualTo("firing.csv");
    assertThat(stalls(tried).get(0).shiftMs()).isEqualTo(-600_000);
  }
}
