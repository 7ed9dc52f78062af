package org.climbwatch.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;
import org.junit.jupiter.api.Test;

/** The life cycle of ANSI/ISA-18.2 / IEC 62682, on a rule whose verdict the test sets. */
class AlarmTest {
  private final SetRule rule = new SetRule();
  private final Alarm alarm = new Alarm(rule, "probe", true);

  @Test
  void isRaisedAfterItsOnDelayAndNotBefore() {
    hold(0, 9);
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);

    hold(10, 10);
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void onDelayStartsAnewWhenTheConditionGoes() {
    hold(0, 9);
    clear(10, 10);
    hold(11, 20);
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);

    hold(21, 21);
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void returnsUnacknowledgedWhenItGoesBeforeAnAnswerAndNormalOnceAnswered() {
    hold(0, 10);
    clear(11, 15);
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    clear(16, 16);
    assertThat(alarm.state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);

    assertThat(alarm.acknowledge()).isPresent();
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);
  }

  @Test
  void answeredAlarmGoesNormalByItself() {
    hold(0, 10);
    alarm.acknowledge();
    assertThat(alarm.state()).isEqualTo(AlarmState.ACKNOWLEDGED);

    clear(11, 16);
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);
  }

  @Test
  void acknowledgingNeverHidesANewOccurrence() {
    hold(0, 10);
    String first = alarm.occurrence().orElseThrow().id();
    alarm.acknowledge();
    clear(11, 16);

    hold(17, 27);

    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(alarm.occurrence().orElseThrow().id()).isNotEqualTo(first);
  }

  @Test
  void sameOccurrenceComesBackWhenItHoldsAgainUnanswered() {
    hold(0, 10);
    String first = alarm.occurrence().orElseThrow().id();
    clear(11, 16);

    hold(17, 27);

    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(alarm.occurrence().orElseThrow().id()).isEqualTo(first);
  }

  @Test
  void answeringWhileItHoldsAgainLeavesTheNewOneOnItsWay() {
    hold(0, 10);
    clear(11, 16);
    hold(17, 20);
    alarm.acknowledge();
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);

    hold(21, 27);
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void notKnowingChangesNothing() {
    hold(0, 10);
    rule.verdict = Rule.Verdict.UNKNOWN;
    look(11, 60);
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void timeThatNobodySawIsNotCountedIntoTheOnDelay() {
    hold(0, 5);
    rule.verdict = Rule.Verdict.UNKNOWN;
    look(6, 60);
    hold(61, 70);
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);

    hold(71, 71);
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
    assertThat(alarm.occurrence().orElseThrow().message()).isEqualTo("held 10 s");
  }

  @Test
  void phaseInWhichItDoesNotApplyReturnsItAtOnce() {
    hold(0, 10);
    rule.verdict = Rule.Verdict.NOT_APPLICABLE;
    look(11, 11);
    assertThat(alarm.state()).isEqualTo(AlarmState.RETURNED_UNACKNOWLEDGED);
  }

  @Test
  void gapStartsDelaysAnewAndKeepsWhatStands() {
    hold(0, 9);
    alarm.resume();
    hold(100, 109);
    assertThat(alarm.state()).isEqualTo(AlarmState.NORMAL);
    hold(110, 110);
    alarm.resume();
    assertThat(alarm.state()).isEqualTo(AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void acknowledgingTwiceOrNothingChangesNothing() {
    assertThat(alarm.acknowledge()).isEmpty();
    hold(0, 10);
    assertThat(alarm.acknowledge()).isPresent();
    assertThat(alarm.acknowledge()).isEmpty();
  }

  private void hold(int fromSecond, int toSecond) {
    rule.verdict = Rule.Verdict.HOLDS;
    look(fromSecond, toSecond);
  }

  private void clear(int fromSecond, int toSecond) {
    rule.verdict = Rule.Verdict.CLEAR;
    look(fromSecond, toSecond);
  }

  private void look(int fromSecond, int toSecond) {
    for (int s = fromSecond; s <= toSecond; s++) {
      alarm.look(at(s));
    }
  }

  private static Situation at(int second) {
    return new Situation(
        new Moment(0, second * 1000L),
        "kiln",
        "probe",
        Phase.CLIMBING,
        false,
        OptionalDouble.of(800),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.of(800),
        Meant.NOTHING,
        List.of());
  }

  private static final class SetRule implements Rule {
    private Verdict verdict = Verdict.CLEAR;

    @Override
    public AlarmKind kind() {
      return AlarmKind.CLIMB_STALLED;
    }

    @Override
    public Delays delays() {
      return Delays.ofSeconds(10, 5);
    }

    @Override
    public Verdict look(Situation situation, boolean standing) {
      return verdict;
    }

    @Override
    public String message(Situation situation, long heldSeconds) {
      return "held " + heldSeconds + " s";
    }
  }
}
