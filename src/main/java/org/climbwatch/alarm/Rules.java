package org.climbwatch.alarm;

import java.util.List;

/** All kinds of rules. This list is where a new one is registered. */
public final class Rules {
  public static final List<RuleKind> ALL =
      List.of(
          OverTemperature.KIND,
          ClimbTooFast.KIND,
          ClimbStalled.KIND,
          StallAhead.KIND,
          Sagging.KIND,
          Falling.KIND,
          ProbeFault.KIND,
          ReadingsStopped.KIND,
          ReadingsLate.KIND,
          StorageTrouble.KIND,
          StorageLow.KIND,
          ClockUntrusted.KIND,
          ProbesApart.KIND,
          ProbeTooHot.KIND,
          TargetReached.KIND,
          HoldOver.KIND,
          BehindPlan.KIND,
          AheadOfPlan.KIND,
          CoolingTooFast.KIND,
          SafeToOpen.KIND,
          ProbeReversed.KIND,
          ProbeStuck.KIND,
          ProbeNoisy.KIND,
          LooksScatter.KIND,
          ProbeJumps.KIND,
          ProbeLeapt.KIND,
          ColdKilnDisagrees.KIND,
          ColdJunctionHot.KIND,
          ColdJunctionUnsteady.KIND);

  private Rules() {}

  /** The kind of rule behind a kind of alarm. */
  public static RuleKind of(AlarmKind alarm) {
    return ALL.stream().filter(one -> one.alarm() == alarm).findFirst().orElseThrow();
  }
}
