package org.climbwatch.journal;

/**
 * The curve of one probe.
 *
 * @param probe its name
 */
public record ProbeCurve(String probe, Curve curve) {}
