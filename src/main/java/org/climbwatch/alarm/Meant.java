package org.climbwatch.alarm;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Plan;

/**
 * What kiln and probe are meant to do.
 *
 * @param targetC °C that the firing is meant to reach
 * @param holdMinutes how long a hold is meant to last
 * @param plannedC °C that the plan wants now
 * @param planRests whether the plan wants the kiln to hold or to come down now
 * @param inPhaseS s since the phase began
 * @param probeLimitC °C that the probe may be used to
 * @param coupleEndC °C beyond which the probe's couple tells nothing
 * @param followed the probe that the firing follows, where this one is only compared with it
 */
public record Meant(
    OptionalDouble targetC,
    OptionalDouble holdMinutes,
    OptionalDouble plannedC,
    boolean planRests,
    OptionalDouble inPhaseS,
    OptionalDouble probeLimitC,
    OptionalDouble coupleEndC,
    Optional<String> followed) {
  /** Nothing is known of what is meant. */
  public static final Meant NOTHING =
      new Meant(
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          false,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Optional.empty());

  /**
   * Whether the plan wants the kiln to hold or to come down and it is no lower: no climb is meant.
   */
  boolean restsAsPlanned(OptionalDouble temperatureC) {
    return planRests
        && plannedC.isPresent()
        && temperatureC.isPresent()
        && temperatureC.getAsDouble() >= plannedC.getAsDouble() - Plan.BY_HAND_C;
  }

  /** Whether a temperature has reached the target; false where either is not known. */
  boolean reached(OptionalDouble temperatureC) {
    return targetC.isPresent()
        && temperatureC.isPresent()
        && temperatureC.getAsDouble() >= targetC.getAsDouble();
  }
}
