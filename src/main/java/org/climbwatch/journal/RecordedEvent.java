package org.climbwatch.journal;

import java.time.Instant;
import java.util.Optional;

/**
 * An event as it was announced.
 *
 * @param at wall time
 * @param elapsedMs ms since the firing's first reading
 * @param event {@code firing}, {@code phase}, {@code alarm} or {@code reminder}
 * @param alarmId which occurrence, for alarms and reminders
 */
public record RecordedEvent(
    Instant at,
    long elapsedMs,
    String event,
    String subject,
    String state,
    String message,
    Optional<String> alarmId) {}
