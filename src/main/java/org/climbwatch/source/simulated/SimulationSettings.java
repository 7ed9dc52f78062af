package org.climbwatch.source.simulated;

/**
 * Which firing the model plays.
 *
 * @param seed reproduces noise and the moment of the fault
 * @param fault what goes wrong in the first firing; nothing does in later ones
 */
public record SimulationSettings(FiringKind firing, long seed, FaultKind fault) {}
