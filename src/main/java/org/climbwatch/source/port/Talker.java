package org.climbwatch.source.port;

import java.io.IOException;
import java.time.Duration;

/** One who shares a line with others, and asks when it is his turn. All calls are of one thread. */
public interface Talker {
  /** What a turn leaves behind on the line. */
  enum Left {
    /** Nothing: what was asked was answered. */
    NOTHING,
    /** An answer may still be on its way, and must not be taken for that to another question. */
    ANSWER_PENDING
  }

  /** The port is open, for the first time or again. */
  void opened();

  /**
   * The port can't be opened or was lost.
   *
   * @param reason for people: which port, why, what to do
   */
  void gone(String reason);

  /**
   * Asks, waits for the answer and notes what came of it.
   *
   * @throws IOException when the line is lost
   */
  Left turn(Wire wire) throws IOException;

  /** Another one's turn, or an own one, has left an answer pending. */
  void answerPending(Talker whose);

  /** From the end of one turn to the next. */
  Duration pause();
}
