/**
 * The kiln model: a small propane top-hat fibre kiln by its heat balance, for demo and tests.
 *
 * <pre>
 *   FiringPlan (potter, bottle) -> SimulatedFiring (gas, faults) -> KilnModel (heat)
 *                                                                     |
 *                       SimulatedSource &lt;- SimulatedProbe (lag, noise, amplifier)
 * </pre>
 */
package org.climbwatch.source.simulated;
