package org.climbwatch.source.simulated;

/** How much air goes through a kiln without a flame. Rough (common practice). */
enum Draught {
  /** Burner ports and damper stopped up: what seeps. */
  SHUT(0.001),
  /** As fired: the flue draws cold air in through the burner ports, some 6 g/s. */
  OPEN(0.006),
  /** Damper out and lid lifted by a hand's width. */
  LID_LIFTED(0.03);

  private final double kwPerK;

  Draught(double kwPerK) {
    this.kwPerK = kwPerK;
  }

  /** kW that the air carries away for each K above the outside. */
  double kwPerK() {
    return kwPerK;
  }
}
