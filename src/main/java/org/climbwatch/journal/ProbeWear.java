package org.climbwatch.journal;

/**
 * What firings have done to a probe.
 *
 * @param firings how many it has measured in
 * @param highFirings how many of them took it to 1000 °C and above
 * @param hoursOver800C h at 800 °C and above
 * @param hoursOver1000C h at 1000 °C and above
 * @param hoursOver1100C h at 1100 °C and above
 * @param hoursOver1200C h at 1200 °C and above
 */
public record ProbeWear(
    int firings,
    int highFirings,
    double hoursOver800C,
    double hoursOver1000C,
    double hoursOver1100C,
    double hoursOver1200C) {}
