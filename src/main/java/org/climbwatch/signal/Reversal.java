package org.climbwatch.signal;

/**
 * A probe that reads below its cold junction, and falls.
 *
 * @param belowC °C below the cold junction, positive; below freezing where none is told
 * @param fallenC °C that it has fallen within the last hour by more than the cold junction did
 */
public record Reversal(double belowC, double fallenC) {}
