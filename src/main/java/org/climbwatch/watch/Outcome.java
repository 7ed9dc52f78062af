package org.climbwatch.watch;

import java.util.List;
import java.util.Optional;

/**
 * What accepting one input gave.
 *
 * @param kept whether a reading belongs into the journal: all of them while a firing is on or the
 *     kiln is hot, a few while it is cold and idle
 * @param judged what the core made of a reading; empty for other inputs
 * @param events in the order in which they happened
 */
public record Outcome(boolean kept, Optional<Judged> judged, List<Event> events) {}
