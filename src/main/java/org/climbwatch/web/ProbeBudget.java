package org.climbwatch.web;

import java.time.Instant;
import java.util.Optional;
import org.climbwatch.thermocouple.Budget;

/**
 * How sure a probe's temperature is at this moment.
 *
 * @param probe its configured name
 * @param budget empty while there is no temperature
 * @param checked when it was last compared with something better known, if ever
 * @param checkedHow by whom and against what; blank if never
 */
public record ProbeBudget(
    String probe, Optional<Budget> budget, Optional<Instant> checked, String checkedHow) {}
