package org.climbwatch.alarm;

/**
 * A probe is hotter than its wire and sheath may be used to. Applies in every phase, to a probe
 * whose limit is set.
 *
 * @param deadbandC °C below the limit at which it returns
 */
public record ProbeTooHot(Delays delays, double deadbandC) implements Rule {
  static final RuleKind KIND =
      RuleKind.ofProbe(AlarmKind.PROBE_TOO_HOT)
          .number("deadband_c", 5, 0, 100)
          .delays(60, 60)
          .makes(set -> new ProbeTooHot(set.delays(), set.number("deadband_c")));

  @Override
  public AlarmKind kind() {
    return AlarmKind.PROBE_TOO_HOT;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    if (situation.meant().probeLimitC().isEmpty()) {
      return Verdict.NOT_APPLICABLE;
    }
    if (situation.temperatureC().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    double dueC = situation.meant().probeLimitC().getAsDouble() - (standing ? deadbandC : 0);
    return situation.temperatureC().getAsDouble() >= dueC ? Verdict.HOLDS : Verdict.CLEAR;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return String.format(
        "%s, probe %s: %s, over the %s that this probe may be used to, for %s. It ages quickly from"
            + " here on and will read low, so that the kiln gets hotter than the number says. Go by"
            + " cones; check the probe against them and replace it soon.",
        situation.kiln(),
        situation.probe(),
        Words.degrees(situation.temperatureC().orElseThrow()),
        Words.degrees(situation.meant().probeLimitC().orElseThrow()),
        Words.span(heldSeconds));
  }
}
