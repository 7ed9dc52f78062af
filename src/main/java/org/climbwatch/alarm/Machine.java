package org.climbwatch.alarm;

import java.util.Optional;
import java.util.OptionalLong;
import org.climbwatch.reading.Moment;

/**
 * What was last reported of the machine that the program runs on.
 *
 * @param writingTrouble why the record does not reach the disk; blank when it does
 * @param freeMb 10⁶ bytes free on the disk of the record
 * @param clockDoubt why the wall clock cannot be trusted; blank while nothing speaks against it
 * @param jump the last one of the wall clock while a firing was on
 */
public record Machine(
    String writingTrouble, OptionalLong freeMb, String clockDoubt, Optional<Jump> jump) {
  /** Nothing was reported yet. */
  public static final Machine UNKNOWN = new Machine("", OptionalLong.empty(), "", Optional.empty());

  /**
   * A jump of the wall clock.
   *
   * @param seconds forward, or back where negative
   */
  public record Jump(Moment at, long seconds) {}

  /** The same with a newer report. */
  public Machine with(Moment at, Report report) {
    if (report instanceof Report.Writing writing) {
      return new Machine(writing.trouble(), freeMb, clockDoubt, jump);
    } else if (report instanceof Report.FreeSpace space) {
      return new Machine(writingTrouble, OptionalLong.of(space.megabytes()), clockDoubt, jump);
    } else if (report instanceof Report.Clock clock) {
      return new Machine(writingTrouble, freeMb, clock.doubt(), jump);
    }
    long seconds = ((Report.ClockJump) report).seconds();
    return new Machine(writingTrouble, freeMb, clockDoubt, Optional.of(new Jump(at, seconds)));
  }
}
