package org.climbwatch.source.simulated;

import java.util.Arrays;
import java.util.stream.Collectors;

/** Where in the simulated kiln a probe sits. How far they differ is invented (common practice). */
public enum Place {
  UPPER("upper"),
  /** Colder than above while the kiln climbs, less so when all glows. */
  LOWER("lower"),
  /** In what leaves the kiln: hotter while much gas burns, colder without a flame. */
  FLUE("flue");

  private final String word;

  Place(String word) {
    this.word = word;
  }

  /** The word of the configuration. */
  public String word() {
    return word;
  }

  /**
   * The place of a word.
   *
   * @throws IllegalArgumentException for any other; the message names the allowed ones
   */
  public static Place ofWord(String word) {
    for (Place place : values()) {
      if (place.word.equals(word)) {
        return place;
      }
    }
    throw new IllegalArgumentException(
        "unknown place \""
            + word
            + "\"; allowed: "
            + Arrays.stream(values()).map(Place::word).collect(Collectors.joining(", ")));
  }

  /**
   * °C there.
   *
   * @param chamberC °C that the model has one of
   * @param outsideC °C around the kiln
   * @param flame share of the burners' full power
   */
  double celsius(double chamberC, double outsideC, double flame) {
    double riseC = chamberC - outsideC;
    return switch (this) {
      case UPPER -> chamberC;
      case LOWER -> chamberC - 0.04 * riseC * Math.max(1 - chamberC / 1600, 0);
      case FLUE -> flame > 0 ? chamberC + 90 * flame - 0.02 * riseC : outsideC + 0.85 * riseC;
    };
  }
}
