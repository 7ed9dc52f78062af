package org.climbwatch.source.simulated;

import java.time.Duration;
import java.util.Arrays;
import java.util.stream.Collectors;

/** Which firing the model plays. */
public enum FiringKind {
  /** A glaze firing to about cone 9 in some nine hours. */
  STONEWARE("stoneware", FiringPlan.stoneware(), FiringPlan.stoneware()),
  /** Light ware to about 1000 °C in an hour and a half. */
  FAST_REDUCTION("fast_reduction", FiringPlan.fastReduction(), FiringPlan.fastReduction()),
  /** Fast work that is already on its way, and a bottle that frosts over. */
  DEMO("demo", FiringPlan.demo(), FiringPlan.demoAgain());

  private final String word;
  private final FiringPlan first;
  private final FiringPlan later;

  FiringKind(String word, FiringPlan first, FiringPlan later) {
    this.word = word;
    this.first = first;
    this.later = later;
  }

  /** The word of the command line and the configuration. */
  public String word() {
    return word;
  }

  /** All words, for a message. */
  public static String words() {
    return Arrays.stream(values()).map(FiringKind::word).collect(Collectors.joining(", "));
  }

  /** From the model's beginning until the potter shuts the gas. */
  public Duration gasOff() {
    return Duration.ofSeconds(Math.round((first.gasOffMinute() - first.headStartMinutes()) * 60));
  }

  /** From lighting until the kiln has long been cold and is lit again. */
  public Duration cycle() {
    return Duration.ofHours(first.cycleHours());
  }

  /**
   * The kind of a word.
   *
   * @throws IllegalArgumentException for any other; the message names the allowed ones
   */
  public static FiringKind ofWord(String word) {
    for (FiringKind kind : values()) {
      if (kind.word.equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("unknown firing \"" + word + "\"; allowed: " + words());
  }

  /** What is done in a round, from 0. */
  FiringPlan plan(long round) {
    return round == 0 ? first : later;
  }
}
