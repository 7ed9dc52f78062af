package org.climbwatch.source.spi;

import java.util.Arrays;
import java.util.List;

/** The amplifiers that can be read, one line each. */
public enum ChipKind {
  MAX31855("max31855"),
  MAX31856("max31856"),
  MAX6675("max6675"),
  ADS1118("ads1118");

  private final String word;

  ChipKind(String word) {
    this.word = word;
  }

  /** The word of the configuration. */
  public String word() {
    return word;
  }

  /** All words, in the order of the lines above. */
  public static List<String> words() {
    return Arrays.stream(values()).map(ChipKind::word).toList();
  }

  /**
   * The chip of a word.
   *
   * @throws IllegalArgumentException for any other word; the message names the allowed ones
   */
  public static ChipKind ofWord(String word) {
    return Arrays.stream(values())
        .filter(kind -> kind.word.equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "unknown chip \"" + word + "\"; allowed: " + String.join(", ", words())));
  }
}
