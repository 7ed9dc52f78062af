package org.climbwatch.watch;

import java.util.Optional;
import java.util.OptionalDouble;
import org.climbwatch.firing.Phase;
import org.climbwatch.reading.Fault;
import org.climbwatch.reading.Reading;
import org.climbwatch.signal.Climb;

/**
 * A reading and what the core made of it.
 *
 * @param reading as it came
 * @param temperatureC °C; empty exactly when there is a fault
 * @param uncertaintyC °C, expanded with k = 2; empty where there is no temperature
 * @param fault the reading's own, or out of range found in linearising
 * @param spike whether it was set aside in the climb and the alarms
 * @param climb at that moment, once known
 * @param phase at that moment
 * @param spreadC °C, of the looks that the reading is the middle of; empty with a single look, or
 *     without a temperature
 */
public record Judged(
    Reading reading,
    OptionalDouble temperatureC,
    OptionalDouble uncertaintyC,
    Optional<Fault> fault,
    boolean spike,
    Optional<Climb> climb,
    Phase phase,
    OptionalDouble spreadC) {
  /** One whose looks have no spread: a single look, or none with a temperature. */
  public Judged(
      Reading reading,
      OptionalDouble temperatureC,
      OptionalDouble uncertaintyC,
      Optional<Fault> fault,
      boolean spike,
      Optional<Climb> climb,
      Phase phase) {
    this(reading, temperatureC, uncertaintyC, fault, spike, climb, phase, OptionalDouble.empty());
  }
}
