package org.climbwatch.signal;

/**
 * A fall that a slow probe still hides: its reading only bends yet, and where the bend leads tells
 * how the kiln falls behind it.
 *
 * @param nowCPerHour °C/h at this moment, by the bend that fits best
 * @param nowUncertaintyCPerHour °C/h, expanded with k = 2
 * @param aheadCPerHour °C/h a minute from now if it goes on bending so
 * @param missingC °C by which the end lies below where the line before would have led
 * @param bendInErrors how plain the bend is, in standard errors
 * @param leftInErrors how far the readings lie from that bend, in standard errors
 * @param dropC °C below the highest since shortly before the turn
 */
public record HiddenFall(
    double nowCPerHour,
    double nowUncertaintyCPerHour,
    double aheadCPerHour,
    double missingC,
    double bendInErrors,
    double leftInErrors,
    double dropC) {}
