package org.climbwatch.signal;

/**
 * A fall that shows through noise and jumps: the middle temperature of each of the last minutes is
 * lower than that of the minute before.
 *
 * @param dropC °C below the highest of the last ten minutes
 * @param cPerHour °C/h since then, positive
 */
public record SteadyFall(double dropC, double cPerHour) {}
