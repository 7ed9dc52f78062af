package org.climbwatch.web;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One firing in a few words.
 *
 * @param name what the potter calls it; may be blank
 * @param byItself the kiln warmed, as against the potter's word
 * @param peakC °C, the hottest good reading so far
 * @param alarms how many occurrences
 */
public record FiringSummary(
    long id,
    String name,
    Instant began,
    Optional<Instant> ended,
    boolean byItself,
    OptionalDouble peakC,
    int alarms) {}
