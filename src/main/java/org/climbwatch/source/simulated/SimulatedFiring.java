package org.climbwatch.source.simulated;

/**
 * One firing of the model, second by second: the potter's gas, what goes wrong with it, and the
 * heat.
 *
 * <p>Goes forward in steps of a second from its own beginning, so what it gives depends on seed and
 * time alone and not on how often it is asked.
 */
final class SimulatedFiring {
  private static final int WHEN_IT_GOES_WRONG = 1;
  private static final int GUSTS = 2;

  /** °C under which the potter takes the stops out, and lifts the lid (common practice). */
  private static final double UNSTOP_BELOW_C = 600;

  private static final double LIFT_BELOW_C = 120;

  /** What a bottle still gives, over parts of the time that it takes to frost over. */
  private static final Polyline FROSTED = Polyline.through(0, 1, 1, 0.38, 3, 0.2);

  /** Part of the time up to gas off in which a bottle frosts over. */
  private static final double FROSTING_SHARE = 0.12;

  /** Minutes for which the potter of a stalled firing keeps the gas on beyond the plan. */
  private static final double STALLED_WAIT_MINUTES = 60;

  private static final int IGNITION_FROM_S = 5;
  private static final int IGNITION_UNTIL_S = 20;

  private final FiringPlan plan;
  private final FaultKind fault;
  private final long seed;
  private final KilnModel model;
  private final double faultAtSecond;
  private final double gasOffMinute;
  private long second;
  private double gust;
  private double flame;

  /**
   * @param model the kiln as the firing finds it
   */
  SimulatedFiring(FiringPlan plan, FaultKind fault, long seed, KilnModel model) {
    this.plan = plan;
    this.fault = fault;
    this.seed = seed;
    this.model = model;
    gasOffMinute = plan.gasOffMinute() + (fault == FaultKind.STALL ? STALLED_WAIT_MINUTES : 0);
    faultAtSecond =
        fault == FaultKind.REVERSED || fault == FaultKind.REVERSED_TWICE
            ? 0
            : plan.gasOffMinute() * 60 * (0.45 + 0.3 * Hash.even(seed, WHEN_IT_GOES_WRONG, 0));
  }

  long second() {
    return second;
  }

  KilnModel model() {
    return model;
  }

  /** Share of the burners' full power that burns now. */
  double flame() {
    return flame;
  }

  /** Second at which the fault begins. */
  double faultAtSecond() {
    return faultAtSecond;
  }

  /** What is wrong now. */
  FaultKind faultNow() {
    return second >= faultAtSecond ? fault : FaultKind.NONE;
  }

  void step() {
    second++;
    double minute = second / 60.0;
    boolean gasOn = minute < gasOffMinute;
    // wind and pressure make the flame waver over a minute or so
    gust = 0.98 * gust + 0.2 * Hash.normal(seed, GUSTS, second);
    flame = gasOn ? gasNow(minute) * plan.burnt().at(minute) * (1 + 0.015 * gust) : 0;
    model.step(plan.kiln().burnerKw() * flame, draught(gasOn));
  }

  private Draught draught(boolean gasOn) {
    if (gasOn) {
      return Draught.OPEN;
    }
    double chamberC = model.chamberC();
    if (chamberC < LIFT_BELOW_C) {
      return Draught.LID_LIFTED;
    }
    return chamberC < UNSTOP_BELOW_C ? Draught.OPEN : Draught.SHUT;
  }

  /** Whether the igniter clicks. */
  boolean igniting() {
    return second >= IGNITION_FROM_S && second < IGNITION_UNTIL_S;
  }

  private double gasNow(double minute) {
    double set = plan.gas().at(minute) * plan.bottle().at(minute);
    return switch (faultNow()) {
      case STALL -> Math.min(set, frostedGas());
      case BURNER_OUT -> 0;
      case RUNAWAY -> 1;
      default -> set;
    };
  }

  /** The bottle gives what it gave when the frost began, then quickly less, then slowly less. */
  private double frostedGas() {
    double sinceMinutes = second / 60.0 - faultAtSecond / 60;
    double frosting = sinceMinutes / (FROSTING_SHARE * plan.gasOffMinute());
    return plan.gas().at(faultAtSecond / 60) * FROSTED.at(frosting);
  }
}
