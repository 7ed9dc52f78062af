package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.climbwatch.alarm.AlarmState.ACKNOWLEDGED;
import static org.climbwatch.alarm.AlarmState.LATCHED;
import static org.climbwatch.alarm.AlarmState.NORMAL;
import static org.climbwatch.alarm.AlarmState.RETURNED_UNACKNOWLEDGED;
import static org.climbwatch.alarm.AlarmState.SHELVED;
import static org.climbwatch.alarm.AlarmState.UNACKNOWLEDGED;

import java.time.Duration;
import java.util.Optional;
import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;

/** What time does to an alarm; the pairs of state and turn are in {@link LifeCycleTest}. */
class AlarmTest {
  private final Bench bench = new Bench();

  @Test
  void isRaisedAfterItsOnDelayAndNotBefore() {
    bench.hold(10);
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(1);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void onDelayStartsAnewWhenTheConditionGoes() {
    bench.hold(10).clear(1).hold(10);
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(1);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void returnsAfterItsOffDelayAndNotBefore() {
    bench.hold(11).clear(5);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);

    bench.hold(1).clear(5);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
    bench.clear(1);
    assertThat(bench.state()).isEqualTo(RETURNED_UNACKNOWLEDGED);
  }

  @Test
  void acknowledgingNeverHidesANewOccurrence() {
    bench.hold(11);
    String first = bench.id();
    bench.acknowledge().clear(6);
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(11);

    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
    assertThat(bench.id()).isNotEqualTo(first);
  }

  @Test
  void sameOccurrenceComesBackWhenItHoldsAgainUnanswered() {
    bench.hold(11);
    String first = bench.id();

    bench.clear(6).hold(11);

    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
    assertThat(bench.id()).isEqualTo(first);
  }

  /** Else a target that is reached today is said to be reached since yesterday's firing. */
  @Test
  void whatHoldsAgainHoldsSinceThenAndNotSinceItsFirstTime() {
    bench.hold(11).clear(3600).hold(11);
    Moment again = bench.now();
    bench.hold(300);

    assertThat(bench.alarm.occurrence().orElseThrow().since()).isEqualTo(again);
    assertThat(bench.changes.get(bench.changes.size() - 1).message())
        .isEqualTo("Still not acknowledged after 5 min. held 310 s");
  }

  @Test
  void answeringWhileItHoldsAgainLeavesTheNewOneOnItsWay() {
    bench.hold(11).clear(6).hold(4).acknowledge();
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(7);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void notKnowingChangesNothing() {
    bench.hold(11).look(Rule.Verdict.UNKNOWN, 50);

    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void timeThatNobodySawIsNotCountedIntoTheOnDelay() {
    bench.hold(6).look(Rule.Verdict.UNKNOWN, 55).hold(10);
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(1);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
    assertThat(bench.alarm.occurrence().orElseThrow().message()).isEqualTo("held 10 s");
  }

  @Test
  void gapStartsDelaysAnewAndKeepsWhatStands() {
    bench.hold(10).pause().hold(10);
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(1).pause();
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void acknowledgingSaysWhoAndTheNextOccurrenceIsNobodys() {
    bench.hold(11).acknowledge();
    assertThat(bench.alarm.occurrence().orElseThrow().by()).isEqualTo(Bench.ANN);

    bench.clear(6).hold(11);

    assertThat(bench.alarm.occurrence().orElseThrow().by()).isEqualTo(Signature.NOBODY);
  }

  @Test
  void shelvedOneIsSilentUntilItsTimeIsOverAndThenAnnouncedAnew() {
    bench.hold(11).acknowledge().shelve(120);
    bench.changes.clear();

    bench.hold(119);
    assertThat(bench.state()).isEqualTo(SHELVED);
    assertThat(bench.changes).isEmpty();

    bench.hold(1);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
    assertThat(bench.changes).hasSize(1);
    // with the numbers of the last look before, not with those of the raising
    assertThat(bench.changes.get(0).message()).isEqualTo("held 129 s");
  }

  @Test
  void whatCameAndWentOnTheShelfIsOver() {
    bench.shelve(120);
    assertThat(bench.alarm.occurrence().orElseThrow().message()).contains("shelved before");

    bench.hold(60).clear(60);

    assertThat(bench.state()).isEqualTo(NORMAL);
    assertThat(bench.alarm.occurrence()).isEmpty();
  }

  @Test
  void shelvedLostFlameThatHasGoneIsLatchedButNotOneThatNeverCame() {
    Bench came = new Bench(AlarmKind.FALLING).shelve(60).hold(20).clear(40);
    Bench never = new Bench(AlarmKind.FALLING).shelve(60).clear(60);

    assertThat(came.state()).isEqualTo(LATCHED);
    assertThat(never.state()).isEqualTo(NORMAL);
  }

  @Test
  void shelvingAnewMovesTheEnd() {
    bench.hold(11).shelve(60).hold(50).shelve(60).hold(59);
    assertThat(bench.state()).isEqualTo(SHELVED);

    bench.hold(1);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void unansweredIsSaidAgainAtGrowingPausesAndNoLongerOnceAnswered() {
    bench.hold(11);
    bench.changes.clear();

    bench.hold(3600 * 2);

    // after 5 min, then 10, 20, 40 and 40 more
    assertThat(bench.changes).allMatch(AlarmChange::reminder);
    assertThat(bench.changes)
        .extracting(AlarmChange::message)
        .containsExactly(
            "Still not acknowledged after 5 min. held 310 s",
            "Still not acknowledged after 15 min. held 910 s",
            "Still not acknowledged after 35 min. held 2110 s",
            "Still not acknowledged after 75 min. held 4510 s",
            "Still not acknowledged after 115 min. held 6910 s");
    bench.acknowledge();
    assertThat(bench.state()).isEqualTo(ACKNOWLEDGED);
    bench.changes.clear();
    assertThat(bench.hold(3600).changes).isEmpty();
  }

  /** "1298 °C, at or above the limit of 1300 °C" would not be true. */
  @Test
  void reminderDoesNotTakeTheNumbersOfTheDeadband() {
    bench.hold(11).holdInDeadband(300);

    assertThat(bench.changes.get(1).message())
        .isEqualTo("Still not acknowledged after 5 min. Seen 5 min ago: held 10 s");
  }

  @Test
  void whatIsOverSaysSoAndNotThatItHolds() {
    bench.hold(11).clear(6);

    assertThat(bench.changes.get(1).message()).isEqualTo("No longer so. It was: held 10 s");
  }

  @Test
  void whatAnotherSaysBetterGivesWayAndKeepsSilent() {
    bench.hold(11).takeOver();

    assertThat(bench.changes).hasSize(2);
    assertThat(bench.changes.get(1).state()).isEqualTo(NORMAL);
    assertThat(bench.changes.get(1).message())
        .isEqualTo("Now said by \"Falling: the flame may be out\". It was: held 10 s");
    assertThat(bench.hold(3600).changes).hasSize(2);
    assertThat(bench.alarm.occurrence()).isEmpty();
  }

  @Test
  void whatStillHoldsWhenTheBetterOneHasGoneIsRaisedAtOnceAndAnew() {
    bench.hold(11).acknowledge().takeOver().hold(60).giveBack().hold(1);

    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
    assertThat(bench.alarm.occurrence().orElseThrow().message()).isEqualTo("held 72 s");
    assertThat(bench.hold(10).changes).hasSize(4);
  }

  @Test
  void whatComesOffTheShelfBesideABetterOneIsNotAnnouncedFirst() {
    bench.hold(11).shelve(60).takeOver().hold(10);
    bench.changes.clear();

    bench.hold(60);

    assertThat(bench.changes).hasSize(1);
    assertThat(bench.changes.get(0).state()).isEqualTo(NORMAL);
    assertThat(bench.changes.get(0).message()).startsWith("Now said by ");
    assertThat(bench.giveBack().hold(1).state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void whatHasGoneUnansweredWaitsForItsAnswerBesideABetterOneAndIsRaisedAgainBehindIt() {
    bench.hold(11).clear(6).takeOver().clear(60);
    assertThat(bench.state()).isEqualTo(RETURNED_UNACKNOWLEDGED);

    bench.hold(20);
    assertThat(bench.state()).isEqualTo(RETURNED_UNACKNOWLEDGED);
    assertThat(bench.giveBack().hold(1).state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void whatIsTakenOffTheShelfByHandBesideABetterOneIsNotAnnouncedFirst() {
    bench.hold(11).shelve(600).takeOver().hold(10);
    bench.changes.clear();

    bench.unshelve();

    assertThat(bench.changes).extracting(AlarmChange::state).containsExactly(NORMAL);
    assertThat(bench.changes.get(0).message()).startsWith("Now said by ");
  }

  @Test
  void onDelayRunsOnWhileAnotherSaysItBetter() {
    bench.takeOver().hold(8).giveBack().hold(2);
    assertThat(bench.state()).isEqualTo(NORMAL);

    bench.hold(1);
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }

  @Test
  void whatCanWaitForTheNextLookIsNotSaidAgain() {
    Bench low = new Bench(AlarmKind.SAFE_TO_OPEN).hold(11);
    low.changes.clear();

    assertThat(low.hold(3600).changes).isEmpty();
  }

  /** 30 min shelved, 10 of them gone, 5 min without supply: 15 are left. */
  @Test
  void shelvingGoesOnAfterAPowerCutForWhatIsLeftOfItsTime() {
    bench.hold(11).shelve(1800).hold(600);

    bench.alarm.resume(bench.now(), new Moment(1, 20_000), Duration.ofMinutes(5));

    assertThat(bench.alarm.occurrence().orElseThrow().shelf().orElseThrow().until())
        .isEqualTo(new Moment(1, 20_000 + 15 * 60_000));
  }

  @Test
  void shelvingIsOverAfterAPowerCutThatLastedLonger() {
    bench.hold(11).shelve(1800);

    bench.alarm.resume(bench.now(), new Moment(1, 20_000), Duration.ofHours(5));

    assertThat(bench.alarm.expire(new Moment(1, 20_000), Optional.empty())).isPresent();
    assertThat(bench.state()).isEqualTo(UNACKNOWLEDGED);
  }
}
