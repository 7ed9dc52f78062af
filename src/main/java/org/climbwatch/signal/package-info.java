/**
 * What a run of temperatures says: which single readings are spikes, and how fast the kiln climbs.
 *
 * <p>Uses {@code reading} only.
 */
package org.climbwatch.signal;
