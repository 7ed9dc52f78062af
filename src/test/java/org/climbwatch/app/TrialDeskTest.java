package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.locks.LockSupport;
import org.climbwatch.alarm.AlarmKind;
import org.climbwatch.alarm.RuleChange;
import org.climbwatch.alarm.Rules;
import org.climbwatch.app.config.Configuration;
import org.climbwatch.app.trial.TrialReport;
import org.climbwatch.journal.Firings;
import org.climbwatch.journal.RecordedEvent;
import org.climbwatch.source.simulated.FaultKind;
import org.climbwatch.watch.WatchSettings;
import org.climbwatch.web.Refused;
import org.climbwatch.web.TrialOrder;
import org.climbwatch.web.TrialSoFar;
import org.climbwatch.web.TrialSoFar.State;
import org.climbwatch.web.TriedFiring;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page's trials over a real journal: a healthy firing, a stalled one, and one that is on. */
class TrialDeskTest {
  private static final String BASE = "[kiln]\ntarget_c = 1270\n[[probe]]\nsource = \"model\"\n";

  @TempDir static Path folder;
  private static Path journalFile;
  private static WatchSettings inForce;

  private TrialDesk desk;

  @BeforeAll
  static void record() {
    journalFile = folder.resolve("journal.sqlite");
    inForce = Configuration.ofText("base.toml", BASE).watch();
    try (RecordedFirings recorded = new RecordedFirings(BASE, journalFile)) {
      recorded.firing("goes well", FaultKind.NONE);
      recorded.firing("stalls", FaultKind.STALL);
      recorded.begin("is on", FaultKind.NONE, 600);
    }
  }

  @AfterEach
  void close() {
    if (desk != null) {
      desk.close();
    }
  }

  private TrialSoFar begin(TrialOrder order) {
    desk = new TrialDesk(inForce, journalFile, () -> {});
    return desk.begin(order);
  }

  private TrialSoFar end(long id) {
    long deadline = System.nanoTime() + Duration.ofSeconds(60).toNanos();
    TrialSoFar trial = desk.one(id).orElseThrow();
    while (trial.state() == State.RUNNING) {
      assertThat(System.nanoTime()).as("still running").isLessThan(deadline);
      LockSupport.parkNanos(5_000_000);
      trial = desk.one(id).orElseThrow();
    }
    return trial;
  }

  private static TrialOrder last(int firings, Map<String, Double> numbers) {
    return new TrialOrder(stalled(numbers), List.of(), OptionalInt.of(firings));
  }

  private static TrialOrder named(List<Long> firings) {
    return new TrialOrder(stalled(Map.of("on_delay_s", 300.0)), firings, OptionalInt.empty());
  }

  private static List<RuleChange> stalled(Map<String, Double> numbers) {
    return Rules.ALL.stream()
        .filter(kind -> kind.alarm() == AlarmKind.CLIMB_STALLED)
        .map(kind -> new RuleChange(kind, Optional.empty(), numbers))
        .toList();
  }

  private String csv(long id) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    desk.csv(id, bytes);
    return bytes.toString(StandardCharsets.UTF_8);
  }

  @Test
  void aShorterDelayIsTriedOnWhatIsOverAndComesEarlier() throws Exception {
    TrialSoFar begun = begin(last(20, Map.of("on_delay_s", 300.0)));
    TrialSoFar trial = end(begun.id());

    assertThat(trial.state()).isEqualTo(State.DONE);
    assertThat(trial.firings()).isEqualTo(2);
    assertThat(trial.tookS()).isPositive();
    assertThat(trial.results())
        .extracting(tried -> tried.firing().name())
        .containsExactly("stalls", "goes well");
    List<TriedFiring.Alarm> stalls =
        trial.results().get(0).alarms().stream()
            .filter(alarm -> alarm.kind() == AlarmKind.CLIMB_STALLED)
            .toList();
    assertThat(stalls).isNotEmpty();
    assertThat(stalls.get(0).change()).isEqualTo("earlier");
    assertThat(stalls.get(0).wasS().getAsDouble() - stalls.get(0).wouldS().getAsDouble())
        .isBetween(290.0, 310.0);
    assertThat(stalls.get(0).message()).contains("climb", "for 5 min");
  }

  /** What was there comes out of the journal's own events, not from the program under test. */
  @Test
  void whatWasIsWhatTheJournalSays() {
    TrialSoFar trial = end(begin(last(2, Map.of("on_delay_s", 300.0))).id());

    try (Firings firings = Firings.open(journalFile)) {
      for (TriedFiring tried : trial.results()) {
        List<Double> recordedS =
            firings.events(tried.firing().id()).stream()
                .filter(event -> event.event().equals("alarm"))
                .filter(event -> event.state().equals("unacknowledged"))
                .filter(event -> event.subject().equals("climb_stalled"))
                .map(RecordedEvent::elapsedMs)
                .map(ms -> ms / 1000.0)
                .toList();
        assertThat(
                tried.alarms().stream()
                    .filter(alarm -> alarm.kind() == AlarmKind.CLIMB_STALLED)
                    .filter(alarm -> alarm.wasS().isPresent())
                    .map(alarm -> alarm.wasS().getAsDouble()))
            .isEqualTo(recordedS);
      }
    }
  }

  @Test
  void itTellsWhatReplayTellsOfTheLinesItGivesForTheSettingsFile() throws Exception {
    TrialSoFar trial =
        end(begin(last(2, Map.of("on_delay_s", 240.5, "least_climb_c_per_h", 35.0))).id());
    String toml = "[alarm.climb_stalled]\nleast_climb_c_per_h = 35\non_delay_s = 240.5\n";

    StringWriter replayed = new StringWriter();
    TrialReport.csv(
        new TrialRun(Configuration.ofText("trial.toml", BASE + toml))
            .firings(journalFile, List.of("2", "1")),
        new PrintWriter(replayed, true));

    assertThat(csv(trial.id())).isEqualTo(replayed.toString()).contains("earlier");
    assertThat(trial.settings())
        .containsExactly(
            Configuration.ofText("trial.toml", BASE + toml)
                .watch()
                .alarm()
                .of(AlarmKind.CLIMB_STALLED));
  }

  /** Nobody has answered what the firing before would have raised, and it holds again. */
  @Test
  void aNervousRuleIsNotGoneWhereItWouldHaveCriedInTheFiringBefore() {
    TrialSoFar trial = end(begin(last(2, Map.of("least_climb_c_per_h", 150.0))).id());

    for (TriedFiring tried : trial.results()) {
      assertThat(tried.alarms())
          .filteredOn(alarm -> alarm.kind() == AlarmKind.CLIMB_STALLED)
          .as(tried.firing().name())
          .isNotEmpty()
          .extracting(TriedFiring.Alarm::change)
          .doesNotContain("gone");
    }
  }

  @Test
  void oneRunsAtATimeAndEndsWhenItIsCancelled() {
    TrialSoFar first = begin(last(2, Map.of("on_delay_s", 300.0)));

    assertThatThrownBy(() -> desk.begin(named(List.of(1L))))
        .isInstanceOfSatisfying(
            Refused.class,
            refused -> {
              assertThat(refused.status()).isEqualTo(409);
              assertThat(refused.detail()).contains("Trial 1 is at it, 0 of 2 firings are done");
            });
    desk.cancel(first.id());

    TrialSoFar ended = end(first.id());
    assertThat(ended.state()).isEqualTo(State.CANCELLED);
    assertThat(ended.results()).hasSizeLessThan(2);
    TrialSoFar next = desk.begin(named(List.of(1L)));
    assertThat(end(next.id()).state()).isEqualTo(State.DONE);
    assertThat(desk.one(first.id())).contains(ended);
    desk.cancel(first.id());
    assertThat(desk.one(next.id()).orElseThrow().state()).isEqualTo(State.DONE);
  }

  /** Somebody still looks at the result of the trial before, and wants its CSV. */
  @Test
  void anOlderResultIsThereUntilSevenNewerOnesAre() throws Exception {
    TrialSoFar first = end(begin(named(List.of(2L))).id());
    String csv = csv(first.id());
    TrialOrder nothing = last(1, Map.of("on_delay_s", 300.0));
    for (int more = 0; more < 7; more++) {
      desk.cancel(desk.begin(nothing).id());
      end(first.id() + 1 + more);
    }

    assertThat(csv).contains("climb_stalled");
    assertThat(csv(first.id())).isEqualTo(csv);
    assertThat(desk.kept())
        .extracting(TrialSoFar::id)
        .containsExactly(8L, 7L, 6L, 5L, 4L, 3L, 2L, 1L);
    desk.cancel(desk.begin(nothing).id());
    assertThat(desk.one(first.id())).isEmpty();
  }

  @Test
  void whatTakesTooLongEndsWithWhatItHas() {
    desk = new TrialDesk(inForce, journalFile, () -> {}, Duration.ZERO);

    TrialSoFar ended = end(desk.begin(named(List.of(1L))).id());

    assertThat(ended.state()).isEqualTo(State.OUT_OF_TIME);
    assertThat(ended.results()).isEmpty();
  }

  @Test
  void aFiringThatIsOnOrNotThereIsRefused() {
    desk = new TrialDesk(inForce, journalFile, () -> {});

    assertThatThrownBy(() -> desk.begin(named(List.of(1L, 3L))))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.status()).isEqualTo(409))
        .hasMessageContaining("Firing 3 is not over");
    assertThatThrownBy(() -> desk.begin(named(List.of(4L))))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.status()).isEqualTo(404))
        .hasMessageContaining("no firing 4");
    assertThat(desk.one(1)).isEmpty();
  }

  @Test
  void aRuleThatWouldLookNowhereIsRefused() {
    RuleChange change =
        new RuleChange(
            Rules.of(AlarmKind.COOLING_TOO_FAST), Optional.empty(), Map.of("from_c", 150.0));
    TrialOrder order = new TrialOrder(List.of(change), List.of(), OptionalInt.of(1));

    assertThatThrownBy(() -> begin(order))
        .isInstanceOf(Refused.class)
        .hasMessageContaining("cooling_too_fast.from_c must lie above to_c");
  }

  @Test
  void withoutAFiringBehindItThereIsNothingToTryOn() {
    Path young = folder.resolve("young.sqlite");
    try (RecordedFirings recorded = new RecordedFirings(BASE, young)) {
      recorded.begin("the first", FaultKind.NONE, 60);
    }
    desk = new TrialDesk(inForce, young, () -> {});

    assertThatThrownBy(() -> desk.begin(last(5, Map.of("on_delay_s", 300.0))))
        .isInstanceOfSatisfying(
            Refused.class, refused -> assertThat(refused.status()).isEqualTo(409))
        .hasMessageContaining("there is none yet");
  }

  /** A daemon has two seconds for its end. */
  @Test
  void closingEndsWhatRuns() {
    TrialSoFar trial = begin(last(2, Map.of("on_delay_s", 300.0)));

    desk.close();

    assertThat(desk.one(trial.id()).orElseThrow().state()).isEqualTo(State.CANCELLED);
  }
}
