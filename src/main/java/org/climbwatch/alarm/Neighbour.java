package org.climbwatch.alarm;

import java.util.OptionalDouble;

/**
 * The probe that the firing follows, for one that is to be compared with it.
 *
 * @param probe its name
 * @param temperatureC °C, its newest, without spikes; empty while it gives none
 */
public record Neighbour(String probe, OptionalDouble temperatureC) {}
