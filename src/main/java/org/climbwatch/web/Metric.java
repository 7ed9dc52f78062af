package org.climbwatch.web;

import java.util.List;
import java.util.Map;

/**
 * One family of numbers for monitoring.
 *
 * @param name of letters, digits and underscores, ending in the unit where there is one
 * @param unit a base unit such as {@code celsius} or {@code seconds}; empty for plain counts
 * @param help one line for people
 */
public record Metric(String name, Kind kind, String unit, String help, List<Sample> samples) {
  /** What kind of number. */
  public enum Kind {
    /** Goes up and down. */
    GAUGE,
    /** Only ever rises while the program runs. */
    COUNTER
  }

  /**
   * One number.
   *
   * @param labels of letters, digits and underscores, in the order to be printed
   */
  public record Sample(Map<String, String> labels, double value) {}

  public Metric {
    if (!name.matches("[a-z][a-z0-9_]*")) {
      throw new IllegalArgumentException("name must be lower_case, was \"" + name + "\"");
    }
    if (!unit.isEmpty() && !name.endsWith("_" + unit)) {
      throw new IllegalArgumentException("name \"" + name + "\" must end in \"_" + unit + "\"");
    }
    if (kind == Kind.COUNTER && name.endsWith("_total")) {
      throw new IllegalArgumentException("leave \"_total\" off the counter \"" + name + "\"");
    }
    samples = List.copyOf(samples);
  }

  /** A gauge of one number without labels. */
  public static Metric gauge(String name, String unit, String help, double value) {
    return new Metric(name, Kind.GAUGE, unit, help, List.of(new Sample(Map.of(), value)));
  }

  /** A counter of one number without labels. */
  public static Metric counter(String name, String unit, String help, double value) {
    return new Metric(name, Kind.COUNTER, unit, help, List.of(new Sample(Map.of(), value)));
  }
}
