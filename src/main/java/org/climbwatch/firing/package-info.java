/**
 * What a firing is: its phases, how one begins by itself when the kiln warms, and how it ends.
 *
 * <p>Uses {@code reading} only.
 */
package org.climbwatch.firing;
