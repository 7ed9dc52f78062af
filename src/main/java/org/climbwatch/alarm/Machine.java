package org.climbwatch.alarm;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;
import org.climbwatch.reading.Moment;

/**
 * What was last reported of the machine that the program runs on.
 *
 * @param writingTrouble why the record does not reach the disk; blank when it does
 * @param freeMb 10⁶ bytes free on the disk of the record
 * @param clockDoubt why the wall clock cannot be trusted; blank while nothing speaks against it
 * @param jumps of the wall clock while a firing was on, the newest first; the last few
 */
public record Machine(
    String writingTrouble, OptionalLong freeMb, String clockDoubt, List<Jump> jumps) {
  /** Nothing was reported yet. */
  public static final Machine UNKNOWN = new Machine("", OptionalLong.empty(), "", List.of());

  /** A time service that sets the clock by steps makes one large one and some small ones. */
  private static final int REMEMBERED = 64;

  /**
   * A jump of the wall clock.
   *
   * @param seconds forward, or back where negative
   */
  public record Jump(Moment at, long seconds) {}

  /** The same with a newer report. */
  public Machine with(Moment at, Report report) {
    if (report instanceof Report.Writing writing) {
      return new Machine(writing.trouble(), freeMb, clockDoubt, jumps);
    } else if (report instanceof Report.FreeSpace space) {
      return new Machine(writingTrouble, OptionalLong.of(space.megabytes()), clockDoubt, jumps);
    } else if (report instanceof Report.Clock clock) {
      return new Machine(writingTrouble, freeMb, clock.doubt(), jumps);
    }
    long seconds = ((Report.ClockJump) report).seconds();
    return new Machine(writingTrouble, freeMb, clockDoubt, jumpsWith(new Jump(at, seconds)));
  }

  private List<Jump> jumpsWith(Jump newest) {
    return Stream.concat(Stream.of(newest), jumps.stream()).limit(REMEMBERED).toList();
  }

  /**
   * The last jump that was not smaller.
   *
   * @param leastS s, forward or back
   */
  Optional<Jump> lastJump(double leastS) {
    for (int i = 0; i < jumps.size(); i++) { // at every reading
      if (Math.abs(jumps.get(i).seconds()) >= leastS) {
        return Optional.of(jumps.get(i));
      }
    }
    return Optional.empty();
  }
}
