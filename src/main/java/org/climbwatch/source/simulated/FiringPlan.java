package org.climbwatch.source.simulated;

/**
 * What a simulated potter does, and what the bottle does to the potter. Invented.
 *
 * @param kiln and its load
 * @param startC °C at the beginning
 * @param headStartMinutes how long it has been going on when the model's time begins
 * @param gas share of the burners' full power that the valves are set to
 * @param burnt share of that gas that burns in the chamber; less in reduction
 * @param bottle share of what is set that the bottle still gives; less while it is frosted
 * @param gasOffMinute minute at which gas and damper are shut
 * @param cycleHours hours from one lighting to the next
 */
record FiringPlan(
    Kiln kiln,
    double startC,
    int headStartMinutes,
    Polyline gas,
    Polyline burnt,
    Polyline bottle,
    double gasOffMinute,
    int cycleHours) {

  /** A glaze firing to about cone 9 in some nine hours; body reduction from 950 °C on. */
  static FiringPlan stoneware() {
    return new FiringPlan(
        Kiln.TOP_HAT,
        14,
        0,
        Polyline.through(
            0, 0.03, 40, 0.055, 90, 0.125, 150, 0.20, 210, 0.28, 270, 0.36, 330, 0.45, 390, 0.52,
            450, 0.59, 545, 0.72),
        Polyline.through(330, 1, 334, 0.86, 375, 0.88, 385, 0.96),
        Polyline.always(1),
        545,
        24);
  }

  /** Light ware to about 1000 °C in an hour and a half. */
  static FiringPlan fastReduction() {
    return new FiringPlan(
        Kiln.TOP_HAT_LIGHT,
        14,
        0,
        Polyline.through(0, 0.05, 10, 0.14, 25, 0.26, 45, 0.39, 65, 0.51, 95, 0.63),
        Polyline.through(75, 1, 80, 0.95),
        Polyline.always(1),
        95,
        12);
  }

  /**
   * Fast work, lit a while ago. The bottle frosts over on the way up and is changed for a full one;
   * then the firing comes to its end.
   */
  static FiringPlan demo() {
    return new FiringPlan(
        Kiln.TOP_HAT_LIGHT,
        14,
        60,
        Polyline.through(
            0, 0.012, 48, 0.032, 62, 0.09, 80, 0.165, 100, 0.235, 120, 0.30, 150, 0.37, 340, 0.39),
        Polyline.always(1),
        Polyline.through(143, 1, 180, 0.52, 200, 0.47, 260, 0.45, 262, 1),
        340,
        13);
  }

  /** The demo's later rounds: a bottle that lasts. */
  static FiringPlan demoAgain() {
    FiringPlan first = demo();
    return new FiringPlan(
        first.kiln(),
        first.startC(),
        0,
        first.gas(),
        first.burnt(),
        Polyline.always(1),
        240,
        first.cycleHours());
  }
}
