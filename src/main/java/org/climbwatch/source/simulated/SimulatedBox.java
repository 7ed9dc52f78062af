package org.climbwatch.source.simulated;

/** The box that the amplifier sits in, and the probe's head on the kiln's shell. */
final class SimulatedBox {
  private static final double COLD_JUNCTION_STEP_C = 0.0625;

  /** The kiln warms the box beside it: °C for each °C of the chamber, and s to follow. */
  private static final double BOX_SHARE = 0.012;

  private static final double BOX_LAG_S = 5400;

  /** The same of the probe's head. */
  private static final double HEAD_SHARE = 0.04;

  private static final double HEAD_LAG_S = 3600;

  /** °C that a box too near the kiln warms up by, and s to follow. */
  private static final double TOO_NEAR_C = 60;

  private static final double TOO_NEAR_LAG_S = 2400;

  /** °C that sun and draught warm and cool it by in turn, s of each, and s to follow. */
  private static final double DRAUGHT_C = 12;

  private static final long DRAUGHT_S = 600;
  private static final double DRAUGHT_LAG_S = 300;

  /** °C that electronics in it warm it by, where that matters. */
  private static final double ELECTRONICS_C = 14;

  private final double outsideC;
  private final double electronicsC;
  private double keptC;
  private double besideC;
  private double headC;

  SimulatedBox(FaultKind fault, double startC, double outsideC) {
    this.outsideC = outsideC;
    electronicsC = fault == FaultKind.REVERSED_TWICE ? ELECTRONICS_C : 0;
    keptC = outsideC + BOX_SHARE * startC;
    headC = outsideC + HEAD_SHARE * (startC - outsideC);
  }

  /** Follows the firing after each of its steps. */
  void step(SimulatedFiring firing, long second) {
    double chamberC = firing.model().chamberC();
    keptC += (outsideC + BOX_SHARE * chamberC - keptC) / BOX_LAG_S;
    headC += (outsideC + HEAD_SHARE * (chamberC - outsideC) - headC) / HEAD_LAG_S;
    FaultKind fault = firing.faultNow();
    if (fault == FaultKind.HOT_BOX) {
      besideC += (TOO_NEAR_C - besideC) / TOO_NEAR_LAG_S;
    } else if (fault == FaultKind.BOX_DRAUGHT) {
      double towardsC = second / DRAUGHT_S % 2 == 0 ? DRAUGHT_C : -DRAUGHT_C;
      besideC += (towardsC - besideC) / DRAUGHT_LAG_S;
    }
  }

  /** °C at the terminals, in the amplifier's steps. */
  double coldJunctionC() {
    double celsius = keptC + besideC + electronicsC;
    return Math.rint(celsius / COLD_JUNCTION_STEP_C) * COLD_JUNCTION_STEP_C;
  }

  /** °C where probe and lead are joined. */
  double headC() {
    return headC;
  }
}
