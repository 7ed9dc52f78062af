package org.climbwatch.source.simulated;

/**
 * Which firing the model plays.
 *
 * @param seed reproduces noise and the moment of the fault
 */
public record SimulationSettings(FiringKind firing, long seed, FaultKind fault) {}
