package org.climbwatch.source;

import java.time.Duration;
import java.util.Optional;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;

/**
 * One probe's readings, asked for once an interval by a single thread.
 *
 * <p>A source starts out without a reading and proves itself by giving one. Whatever goes wrong
 * outside (device gone, garbage, silence) is a {@link Reading.Faulty}, never an exception: a source
 * heals itself by trying again, and is never restarted from outside.
 */
public interface Source extends AutoCloseable {
  /**
   * What came since the last call: the newest look, or the {@linkplain org.climbwatch.reading.Looks
   * middle} of all.
   *
   * @param at the moment that the reading is to carry
   * @return empty when a slower device is not due yet; a fault once it has been silent for longer
   *     than its configured time
   */
  Optional<Reading> read(Moment at);

  /**
   * How far apart looks should be to see each of the device's own once; {@link PolledSource} asks
   * so often. Zero where {@link #read} answers with all that came since the last call.
   */
  default Duration pace() {
    return Duration.ZERO;
  }

  /** One line for people: which device, and how it is doing; never blank. */
  String describe();

  /** Lets go of the device. Called once; throws nothing. */
  @Override
  void close();
}
