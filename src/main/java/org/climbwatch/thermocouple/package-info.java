/**
 * Thermocouples by the published reference functions (NIST Monograph 175, ITS-90), their
 * tolerances, and cold-junction compensation, which adds emfs and never degrees.
 *
 * <p>Uses nothing of the other rooms.
 */
package org.climbwatch.thermocouple;
