package org.climbwatch.alarm;

import org.climbwatch.firing.Phase;

/**
 * The readings step away and back, or break off and come back: a bad contact. Applies while a
 * firing is on. No rate is taken across a step, so climb and fall are judged between them.
 *
 * @param jumps within a quarter of an hour
 */
public record ProbeJumps(Delays delays, double jumps) implements Rule {
  /** One step may be a probe that was pushed; several are a contact (common practice). */
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_JUMPS)
          .number("jumps", 3, 2, 30)
          .delays(0, 1800)
          .makes(set -> new ProbeJumps(set.delays(), set.number("jumps")));

  /** Steps smaller than so many noises are noise. */
  private static final double NOISES = 5;

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_JUMPS;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.phase() == Phase.IDLE && !standing) {
      return Verdict.NOT_APPLICABLE;
    }
    var health = situation.health();
    if (standing) {
      return health.jumps() > 0 ? Verdict.HOLDS : Verdict.CLEAR;
    }
    boolean stepsAreNoise =
        health.largestJumpC() > 0 && health.largestJumpC() < NOISES * health.noiseC().orElse(0);
    return health.jumps() >= jumps && health.jumpsComeAndGo() && !stepsAreNoise
        ? Verdict.HOLDS
        : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    var health = situation.health();
    String size =
        health.largestJumpC() > 0
            ? "stepped away and back by up to " + Words.degrees(health.largestJumpC())
            : "broke off and came back";
    return String.format(
        "%s, probe %s: the signal %s, %d times within 15 min, now %s. Most likely a loose screw or a"
            + " wire that breaks; a failing junction does so shortly before it opens. First check the"
            + " screws at the probe's head and at the amplifier, then move the lead gently and"
            + " watch. Believe neither of its numbers before it is found: go by cones and colour.",
        situation.kiln(),
        situation.probe(),
        size,
        health.jumps(),
        situation.temperatureC().isPresent()
            ? Words.degrees(situation.temperatureC().getAsDouble())
            : "without a temperature");
  }
}
