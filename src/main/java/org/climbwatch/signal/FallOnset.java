package org.climbwatch.signal;

import java.util.Optional;

/**
 * How the last 40 s go against the three minutes before them: a fire that goes out breaks the line
 * at once, long before a slow probe has fallen far.
 *
 * @param beforeCPerHour °C/h of the line before
 * @param nowCPerHour °C/h of the last 40 s
 * @param nowUncertaintyCPerHour °C/h, expanded with k = 2
 * @param turnInErrors how much steeper it falls now, in standard errors of that difference
 * @param missingC °C by which the end lies below where the line before would have led
 * @param missingInErrors the same, in standard errors of that place
 * @param dropC °C below the highest since shortly before the turn
 * @param hidden the last 80 s; empty until three minutes and these are known, while the end lies
 *     less than 0.5 °C below where the line before would have led, and where a kink without any lag
 *     fits best
 */
public record FallOnset(
    double beforeCPerHour,
    double nowCPerHour,
    double nowUncertaintyCPerHour,
    double turnInErrors,
    double missingC,
    double missingInErrors,
    double dropC,
    Optional<HiddenFall> hidden) {}
