/** A recording (CSV) as inputs of the watch, or played as a source. */
package org.climbwatch.source.recorded;
