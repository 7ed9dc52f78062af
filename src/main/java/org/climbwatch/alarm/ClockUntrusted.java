package org.climbwatch.alarm;

import java.util.Optional;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Moment;

/**
 * The wall clock cannot be right, nothing has set it, or it has just jumped while a firing was on.
 * Applies in every phase. Alarms, climbs and durations never go by that clock.
 *
 * @param jumpS s by which it must jump at least
 */
public record ClockUntrusted(Delays delays, double jumpS) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofFiring(AlarmKind.CLOCK_UNTRUSTED)
          .number("jump_s", 60, 5, 86_400)
          .delays(0, 0)
          .makes(set -> new ClockUntrusted(set.delays(), set.number("jump_s")));

  /** ms for which a jump is news. */
  private static final long NEWS_MILLIS = 600_000;

  @Override
  public AlarmKind kind() {
    return AlarmKind.CLOCK_UNTRUSTED;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    boolean holds = !situation.machine().clockDoubt().isEmpty() || news(situation).isPresent();
    return holds ? Verdict.HOLDS : Verdict.CLEAR;
  }

  /** A second jump makes other dates wrong than the first. */
  @Override
  public Optional<Moment> happenedAt(Situation situation) {
    return news(situation).map(Machine.Jump::at);
  }

  /** A jump is news for a time only; whether anybody puts the clock right is another matter. */
  @Override
  public String gone() {
    return "Nothing new of the clock. Dates that went wrong in the record stay wrong.";
  }

  private Optional<Machine.Jump> news(Situation situation) {
    Moment now = situation.at();
    return situation.phase() == Phase.IDLE || situation.machine().jumps().isEmpty()
        ? Optional.empty()
        : situation
            .machine()
            .lastJump(jumpS)
            .filter(jump -> jump.at().sameBoot(now) && now.millisSince(jump.at()) <= NEWS_MILLIS);
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: the clock of this machine cannot be trusted: %s. Dates and times of the"
            + " record may be wrong, its rates, durations and alarms are not: they go by a counter"
            + " of their own. First compare the page's time with a watch; then check network and"
            + " time service (timedatectl), or set the clock by hand, or fit a battery clock.",
        situation.kiln(), situation.probe(), why(situation));
  }

  private String why(Situation situation) {
    if (news(situation).isEmpty()) {
      return situation.machine().clockDoubt();
    }
    long seconds = news(situation).get().seconds();
    return "it jumped "
        + (seconds < 0 ? "back" : "forward")
        + " by "
        + Words.span(Math.abs(seconds))
        + "; somebody or something has set it, or the machine slept";
  }
}
