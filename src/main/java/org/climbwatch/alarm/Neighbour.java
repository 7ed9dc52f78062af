package org.climbwatch.alarm;

/**
 * Another probe of the same kiln, to compare with.
 *
 * @param probe its name
 * @param temperatureC °C, its newest, without spikes
 */
public record Neighbour(String probe, double temperatureC) {}
