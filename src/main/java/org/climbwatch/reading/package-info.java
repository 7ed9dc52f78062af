/**
 * What one look at a probe is: a raw signal or the fault that stands in its place, and when.
 *
 * <p>Uses nothing but the JDK; every other room uses this one.
 */
package org.climbwatch.reading;
