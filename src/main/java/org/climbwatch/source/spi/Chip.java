package org.climbwatch.source.spi;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.climbwatch.reading.Moment;
import org.climbwatch.reading.Reading;
import org.climbwatch.thermocouple.ProbeErrors;

/**
 * One amplifier as it is set up: what its data sheet says of the bus, of time and of errors. Each
 * chip is a record in one file, checked when it is made, with its data sheet named and its frame
 * drawn on top; it makes readings of bytes and moves none.
 */
public interface Chip {
  /** For people: what is printed on the chip, and the letter of the couple. */
  String name();

  /** 0 to 3: clock polarity and phase. */
  int spiMode();

  /** Hz that the chip stands at most. */
  int mostClockHz();

  /** The longest that one conversion takes: looking more often than that shows nothing new. */
  Duration conversion();

  /**
   * Least time from one look to the next. Zero for a chip that converts by itself; for one whose
   * conversion a look stops or begins, a look that comes sooner would spoil it.
   */
  default Duration rest() {
    return Duration.ZERO;
  }

  /** From the end of the setting up to the first conversion that can be believed. */
  default Duration settling() {
    return Duration.ZERO;
  }

  /**
   * How long one reading may come again and again, bit for bit, before it is a fault: the chip
   * select is stuck or the chip no longer converts. Never judged where the steps are so coarse that
   * an honest signal may stand still.
   *
   * @param hot whether the hot junction is far from the cold one, where a fire is never still
   * @return empty for "for ever"
   */
  Optional<Duration> stillAtMost(boolean hot);

  /**
   * Limits of error and steps, as the data sheet states them: in degrees where the chip's own table
   * or line is meant, in the terms of the voltage where that is, so that a budget counts it by the
   * couple's slope at each temperature.
   */
  ProbeErrors errors();

  /** A talk from the first transfer on, for a link that has just been opened. */
  Talk talk(String probe);

  /**
   * What passes between the program and one chip: says what to send and what the answers mean. It
   * remembers what the chip was told last. One thread owns it.
   */
  interface Talk {
    /** Transfers that set the chip up, in order; what comes in meanwhile is of no meaning. */
    default List<byte[]> setUp() {
      return List.of();
    }

    /** Transfers of the next look, in order; the first one brings the answer. */
    List<byte[]> look();

    /** What the answer to the look says; never an exception, whatever the bytes. */
    Answer take(byte[] answer, Moment at);
  }

  /**
   * What a look brought.
   *
   * @param reading empty when the look brought half of one
   * @param settingsLost why the settings must be written again; empty when they stand
   */
  record Answer(Optional<Reading> reading, Optional<String> settingsLost) {
    static Answer of(Reading reading) {
      return new Answer(Optional.of(reading), Optional.empty());
    }

    static Answer nothingYet() {
      return new Answer(Optional.empty(), Optional.empty());
    }

    static Answer settingsLost(Reading fault, String why) {
      return new Answer(Optional.of(fault), Optional.of(why));
    }
  }
}
