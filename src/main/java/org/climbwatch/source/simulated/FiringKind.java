package org.climbwatch.source.simulated;

/**
 * What a simulated potter does with the gas: opens it little by little from one point of (minute,
 * share of the burners' full power) to the next, and shuts it at the end. Invented.
 */
public enum FiringKind {
  /** A glaze firing to about cone 9 in some nine hours, reduction from 950 °C on. */
  STONEWARE(
      "stoneware",
      Kiln.TOP_HAT,
      14,
      new double[][] {
        {0, 0.02},
        {40, 0.04},
        {90, 0.11},
        {150, 0.19},
        {210, 0.27},
        {270, 0.36},
        {330, 0.47},
        {345, 0.44},
        {390, 0.53},
        {450, 0.65},
        {500, 0.76},
        {560, 0.86}
      },
      545),
  /** Light ware to about 1000 °C in an hour and a half. */
  FAST_REDUCTION(
      "fast_reduction",
      Kiln.TOP_HAT_LIGHT,
      14,
      new double[][] {{0, 0.03}, {10, 0.10}, {25, 0.19}, {45, 0.29}, {65, 0.39}, {95, 0.50}},
      95),
  /**
   * Fast work, lit a while ago; the bottle frosts over on the way up, is changed an hour later, and
   * the firing comes to its end.
   */
  DEMO(
      "demo",
      Kiln.TOP_HAT_LIGHT,
      140,
      new double[][] {
        {0, 0.06}, {20, 0.12}, {40, 0.19}, {60, 0.26}, {85, 0.31}, {175, 0.33}, {235, 0.50}
      },
      235);

  private final String word;
  private final Kiln kiln;
  private final double startC;
  private final double[][] gas;
  private final double gasOffMinute;

  FiringKind(String word, Kiln kiln, double startC, double[][] gas, double gasOffMinute) {
    this.word = word;
    this.kiln = kiln;
    this.startC = startC;
    this.gas = gas;
    this.gasOffMinute = gasOffMinute;
  }

  /** The word of the command line and the configuration. */
  public String word() {
    return word;
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
    throw new IllegalArgumentException(
        "unknown firing \"" + word + "\"; allowed: stoneware, fast_reduction, demo");
  }

  Kiln kiln() {
    return kiln;
  }

  double startC() {
    return startC;
  }

  double gasOffMinute() {
    return gasOffMinute;
  }

  /** Share of full power that the potter has set at a minute. */
  double gas(double minute) {
    if (minute >= gasOffMinute) {
      return 0;
    }
    int next = 1;
    while (gas[next][0] <= minute) {
      next++;
    }
    double way = (minute - gas[next - 1][0]) / (gas[next][0] - gas[next - 1][0]);
    return gas[next - 1][1] + way * (gas[next][1] - gas[next - 1][1]);
  }

  /** Share of what is set that the bottle still gives. */
  double bottle(double minute) {
    if (this != DEMO || minute < 70 || minute >= 175) {
      return 1;
    }
    return 1 - 0.30 * Math.min((minute - 70) / 40, 1);
  }
}
