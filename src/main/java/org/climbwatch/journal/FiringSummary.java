package org.climbwatch.journal;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One firing in the list.
 *
 * @param began wall time of its first input
 * @param ended wall time of its last; empty while it is on
 * @param byItself the kiln warmed, as against the potter's word
 * @param peakC °C, spikes left out; empty when there never was a temperature
 * @param readings all of them, faulty ones too
 * @param alarms how many were raised
 * @param duration from its first input to its last, or to the newest while it is on
 */
public record FiringSummary(
    long id,
    String name,
    Instant began,
    Optional<Instant> ended,
    boolean byItself,
    OptionalDouble peakC,
    long readings,
    long alarms,
    Duration duration) {}
