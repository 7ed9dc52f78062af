package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What holds for an alarm whatever comes, second by second, beside a plain count of our own. */
class AlarmPropertiesTest {
  /** Something that goes on for some seconds, or a deed at their beginning. */
  record Act(String what, int seconds) {}

  /** How long the condition has been seen to hold. */
  private static final class Count {
    /** Looks without a break. */
    private int heldS;

    /** Looks since the first of the run, those that saw nothing among them. */
    private int runS;

    private boolean inService = true;

    private void look(Rule.Verdict verdict) {
      heldS = inService && verdict == Rule.Verdict.HOLDS ? heldS + 1 : 0;
      boolean breaks = verdict == Rule.Verdict.CLEAR || verdict == Rule.Verdict.NOT_APPLICABLE;
      runS = breaks || !inService ? 0 : runS + (runS > 0 || heldS > 0 ? 1 : 0);
    }

    private void pause() {
      heldS = 0;
      runS = 0;
    }
  }

  @Provide
  Arbitrary<List<Act>> evening() {
    Arbitrary<Act> looks =
        Combinators.combine(
                Arbitraries.of("HOLDS", "HOLDS", "CLEAR", "UNKNOWN", "NOT_APPLICABLE"),
                Arbitraries.integers().between(1, 25))
            .as(Act::new);
    Arbitrary<Act> deeds =
        Combinators.combine(
                Arbitraries.of(
                    "acknowledge", "shelve", "unshelve", "reset", "take out", "put back", "pause"),
                Arbitraries.integers().between(60, 150))
            .as(Act::new);
    return Arbitraries.oneOf(looks, looks, deeds).list().ofMaxSize(40);
  }

  /** One second, or one deed. */
  private interface Look {
    void after(Bench bench, Count count, List<AlarmChange> changes);
  }

  private static void play(Bench bench, List<Act> evening, Look look) {
    Count count = new Count();
    for (Act act : evening) {
      bench.changes.clear();
      switch (act.what()) {
        case "acknowledge" -> bench.acknowledge();
        case "shelve" -> bench.shelve(act.seconds());
        case "unshelve" -> bench.unshelve();
        case "reset" -> bench.reset();
        case "take out" -> {
          bench.takeOut();
          count.inService = false;
          count.pause();
        }
        case "put back" -> {
          bench.putBack();
          count.inService = true;
        }
        case "pause" -> {
          bench.pause();
          count.pause();
        }
        default -> {
          for (int s = 0; s < act.seconds(); s++) {
            Rule.Verdict verdict = Rule.Verdict.valueOf(act.what());
            bench.changes.clear();
            bench.look(verdict, 1);
            count.look(verdict);
            look.after(bench, count, bench.changes);
          }
          continue;
        }
      }
      look.after(bench, count, bench.changes);
    }
  }

  private static boolean raised(List<AlarmChange> changes) {
    return changes.stream()
        .anyMatch(one -> one.state() == AlarmState.UNACKNOWLEDGED && !one.reminder());
  }

  private static boolean watched(Bench bench) {
    return bench.state() != AlarmState.SHELVED
        && bench.state() != AlarmState.SUPPRESSED_BY_DESIGN
        && bench.state() != AlarmState.OUT_OF_SERVICE;
  }

  /** What comes off the shelf may have held before, so that is left out here. */
  @Property(tries = 400)
  void noneComesBeforeItsOnDelay(@ForAll("evening") List<Act> evening) {
    AlarmState[] before = {AlarmState.NORMAL};
    play(
        new Bench(AlarmKind.FALLING),
        evening,
        (bench, count, changes) -> {
          if (raised(changes) && before[0] != AlarmState.SHELVED) {
            assertThat(count.runS).isGreaterThan(Bench.ON_S);
          }
          before[0] = bench.state();
        });
  }

  /** Without looks that see nothing, the count is exact. */
  @Property(tries = 400)
  void isRaisedExactlyWhenItHasHeldForItsOnDelay(@ForAll("evening") List<Act> evening) {
    List<Act> seen =
        evening.stream()
            .filter(
                act -> !List.of("UNKNOWN", "shelve", "put back", "take out").contains(act.what()))
            .toList();
    play(
        new Bench(),
        seen,
        (bench, count, changes) -> {
          if (raised(changes)) {
            assertThat(count.heldS).isEqualTo(Bench.ON_S + 1);
          }
        });
  }

  @Property(tries = 400)
  void noneIsLost(@ForAll("evening") List<Act> evening) {
    play(
        new Bench(AlarmKind.FALLING),
        evening,
        (bench, count, changes) -> {
          if (count.heldS > Bench.ON_S && watched(bench)) {
            assertThat(bench.state()).isIn(AlarmState.UNACKNOWLEDGED, AlarmState.ACKNOWLEDGED);
          }
        });
  }

  /** Somebody has answered exactly the run of holding that goes on now. */
  @Property(tries = 400)
  void acknowledgementNeverHidesANewOccurrence(@ForAll("evening") List<Act> evening) {
    boolean[] answered = new boolean[1];
    play(
        new Bench(AlarmKind.FALLING),
        evening,
        (bench, count, changes) -> {
          for (AlarmChange change : changes) {
            answered[0] = change.state() == AlarmState.ACKNOWLEDGED;
          }
          boolean stands = count.heldS > Bench.ON_S && watched(bench);
          if (stands && !answered[0]) {
            assertThat(bench.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
          }
        });
  }

  @Property(tries = 400)
  void shelvingNeverOutlivesItsTime(@ForAll("evening") List<Act> evening) {
    play(
        new Bench(AlarmKind.FALLING),
        evening,
        (bench, count, changes) -> {
          if (bench.state() == AlarmState.SHELVED) {
            Shelf shelf = bench.alarm.occurrence().orElseThrow().shelf().orElseThrow();
            assertThat(shelf.until()).isGreaterThan(bench.now());
          }
        });
  }

  @Property(tries = 400)
  void everyOneHasAWayBackToNormal(@ForAll("evening") List<Act> evening) {
    Bench bench = new Bench(AlarmKind.FALLING);
    play(bench, evening, (any, count, changes) -> {});

    bench.putBack().clear(Bench.OFF_S + 1).unshelve().acknowledge().reset();

    assertThat(bench.state()).isEqualTo(AlarmState.NORMAL);
    assertThat(bench.alarm.occurrence()).isEmpty();
  }

  /** Whoever goes by the announcements alone knows at every moment what stands, and how. */
  @Property(tries = 400)
  void announcementsTellWhatStands(@ForAll("evening") List<Act> evening) {
    AlarmState[] told = {AlarmState.NORMAL};
    play(
        new Bench(AlarmKind.FALLING),
        evening,
        (bench, count, changes) -> {
          changes.forEach(change -> told[0] = change.state());
          AlarmState state = bench.state();
          assertThat(told[0]).isEqualTo(state.stands() ? state : AlarmState.NORMAL);
        });
  }
}
