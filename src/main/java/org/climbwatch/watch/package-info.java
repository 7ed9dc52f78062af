/**
 * The state machine that composes thermocouple, signal, firing and alarm: inputs in, events out.
 *
 * <pre>
 *   Input -> Watch.accept -> Outcome(kept, events)
 *                         -> Watch.view()  what is true now
 * </pre>
 *
 * <p>No clock, thread, file or dice: the same inputs give the same events, bit for bit.
 */
package org.climbwatch.watch;
