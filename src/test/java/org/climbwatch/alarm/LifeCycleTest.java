package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every pair of state and turn, as {@code docs/alarms.md} has them: in the program's own table, and
 * as an alarm really goes.
 */
class LifeCycleTest {
  static List<DocumentedLifeCycle.Pair> pairs() {
    return DocumentedLifeCycle.pairs();
  }

  @Test
  void docsHaveEveryPair() {
    Set<String> found = new HashSet<>();
    pairs().forEach(pair -> found.add(pair.from() + " " + pair.turn() + " " + pair.latches()));

    assertThat(pairs()).hasSize(found.size());
    assertThat(found).hasSize(AlarmState.values().length * Turn.values().length * 2);
  }

  @ParameterizedTest
  @MethodSource("pairs")
  void tableIsThatOfTheDocs(DocumentedLifeCycle.Pair pair) {
    assertThat(LifeCycle.next(pair.from(), pair.turn(), pair.latches())).isEqualTo(pair.next());
  }

  /** Without those that start where an alarm that does not latch never is. */
  static List<DocumentedLifeCycle.Pair> reachable() {
    return pairs().stream()
        .filter(pair -> pair.latches() || pair.from() != AlarmState.LATCHED)
        .toList();
  }

  /** Looks, deeds and settings only; pairs that these cannot bring about change nothing. */
  @ParameterizedTest
  @MethodSource("reachable")
  void alarmGoesAsTheDocsSay(DocumentedLifeCycle.Pair pair) {
    Bench bench = in(pair.from(), pair.latches() ? AlarmKind.FALLING : AlarmKind.CLIMB_STALLED);
    assertThat(bench.state()).isEqualTo(pair.from());

    boolean possible = turn(bench, pair.turn());

    assertThat(bench.state()).isEqualTo(possible ? pair.next() : pair.from());
    assertThat(possible || pair.next() == pair.from()).as("only what changes nothing").isTrue();
  }

  /** Nothing but these words is announced, and each at once. */
  @ParameterizedTest
  @MethodSource("reachable")
  void changeOfWhatStandsIsAnnouncedAndNoOther(DocumentedLifeCycle.Pair pair) {
    Bench bench = in(pair.from(), pair.latches() ? AlarmKind.FALLING : AlarmKind.CLIMB_STALLED);
    bench.changes.clear();

    turn(bench, pair.turn());

    boolean announced =
        pair.next() != pair.from() && (pair.from().stands() || pair.next().stands());
    boolean newEnd = pair.from() == AlarmState.SHELVED && pair.turn() == Turn.SHELVED;
    boolean again = pair.from() == AlarmState.UNACKNOWLEDGED && pair.turn() == Turn.ANEW;
    assertThat(bench.changes).hasSize(announced || newEnd || again ? 1 : 0);
    if (announced) {
      AlarmState said = pair.next().stands() ? pair.next() : AlarmState.NORMAL;
      assertThat(bench.changes.get(0).state()).isEqualTo(said);
    }
  }

  @Test
  void onlyTheLostFlameLatches() {
    assertThat(Arrays.stream(AlarmKind.values()).filter(AlarmKind::latching))
        .containsExactly(AlarmKind.FALLING);
  }

  private static Bench in(AlarmState state, AlarmKind kind) {
    Bench bench = new Bench(kind).clear(1);
    return switch (state) {
      case NORMAL -> bench;
      case UNACKNOWLEDGED -> bench.hold(11);
      case ACKNOWLEDGED -> bench.hold(11).acknowledge();
      case RETURNED_UNACKNOWLEDGED -> bench.hold(11).clear(6);
      case LATCHED -> bench.hold(11).clear(6).acknowledge();
      case SHELVED -> bench.hold(11).shelve(600);
      case SUPPRESSED_BY_DESIGN -> bench.look(Rule.Verdict.NOT_APPLICABLE, 1);
      case OUT_OF_SERVICE -> bench.takeOut();
    };
  }

  /** Whether it can come about at all: a rule that does not look sees nothing hold. */
  private static boolean turn(Bench bench, Turn turn) {
    boolean looks =
        bench.state() != AlarmState.SUPPRESSED_BY_DESIGN
            && bench.state() != AlarmState.OUT_OF_SERVICE;
    switch (turn) {
      case HOLDS -> {
        if (looks) {
          bench.hold(11);
        }
        return looks;
      }
      case GONE -> {
        if (looks) {
          bench.clear(6);
        }
        return looks;
      }
      case SUPPRESSED -> bench.putBack().look(Rule.Verdict.NOT_APPLICABLE, 1);
      case TAKEN_OVER -> bench.takeOver();
      case TAKEN_OUT -> bench.takeOut();
      case APPLIES -> bench.putBack().look(Rule.Verdict.UNKNOWN, 1);
      case ACKNOWLEDGED -> bench.acknowledge();
      case SHELVED -> bench.shelve(900);
      case UNSHELVED_HOLDING -> bench.unshelve();
      case UNSHELVED_GONE -> {
        if (bench.state() == AlarmState.SHELVED) {
          bench.clear(6);
        }
        bench.unshelve();
      }
      case RESET -> bench.reset();
      case ANEW -> bench.happens();
    }
    return true;
  }
}
