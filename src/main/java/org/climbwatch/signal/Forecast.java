package org.climbwatch.signal;

import java.util.Optional;

/** Where the fire is heading if it burns on as it does. */
public sealed interface Forecast {

  /**
   * It is known, each figure with its interval.
   *
   * @param temperatureC °C now, noise taken out
   * @param climbCPerHour °C/h now, noise taken out
   * @param levelC °C at which gain and losses come to balance; infinite while no level shows
   * @param timeConstantS s for 63 % of the way to the level; infinite while no level shows
   * @param arrivalS s from now to the target, infinite ends where it may never come; empty without
   *     a target or at it
   * @param sinceFallS s since the climb fell at once, as when gas or damper is turned or a burner
   *     goes out; infinite when that was not seen
   */
  record Known(
      double temperatureC,
      double climbCPerHour,
      Span levelC,
      Span timeConstantS,
      Optional<Span> arrivalS,
      double sinceFallS)
      implements Forecast {
    /**
     * Seconds until the climb has sunk under a rate, by the upper end of the level: 0 when it has,
     * infinite while no level shows.
     *
     * @param cPerHour °C/h, above 0
     */
    public double latestUnderS(double cPerHour) {
      double riseC = levelC.high() - temperatureC;
      if (climbCPerHour <= cPerHour || riseC <= 0) {
        return 0;
      }
      return riseC / climbCPerHour * 3600 * StrictMath.log(climbCPerHour / cPerHour);
    }
  }

  /**
   * It is not known yet.
   *
   * @param sinceFallS as of {@link Known}
   */
  record NotYet(Reason reason, double sinceFallS) implements Forecast {
    /** Of a curve of which nothing has been seen. */
    public NotYet(Reason reason) {
      this(reason, Double.POSITIVE_INFINITY);
    }
  }

  /**
   * s since the climb fell at once, as when gas or damper is turned or a burner goes out; infinite
   * when that was not seen.
   */
  double sinceFallS();

  /** Why there is none yet. The word is what JSON carries. */
  enum Reason {
    /** The firing, or the readings after a gap, are too young. */
    TOO_EARLY("too_early", "not enough of the curve yet"),
    /** The climb has just changed at once: gas, damper or door. */
    CHANGED("changed", "the fire has just been changed"),
    /** No climb is meant: no firing, drying, holding or cooling. */
    NOT_CLIMBING("not_climbing", "the kiln is not meant to climb now");

    private final String word;
    private final String plainly;

    Reason(String word, String plainly) {
      this.word = word;
      this.plainly = plainly;
    }

    /** The lower-case word of the contract. */
    public String word() {
      return word;
    }

    /** For a page or a message. */
    public String plainly() {
      return plainly;
    }
  }

  /** The known forecast, if it is. */
  default Optional<Known> known() {
    return this instanceof Known known ? Optional.of(known) : Optional.empty();
  }
}
