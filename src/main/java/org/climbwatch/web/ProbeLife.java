package org.climbwatch.web;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What a probe has been through, and what follows from it.
 *
 * @param probe its configured name
 * @param type letter of the couple
 * @param fitted when it was put in, where that is said; only firings since then are counted
 * @param firings how many it has measured in
 * @param highFirings how many of them took it to 1000 °C and above
 * @param hoursOver800C h at 800 °C and above
 * @param hoursOver1000C h at 1000 °C and above
 * @param hoursOver1100C h at 1100 °C and above
 * @param hoursOver1200C h at 1200 °C and above
 * @param drift how it has come to stand beside the followed probe over the firings, in a sentence
 *     or two; empty while that is nothing to speak of
 * @param replace {@code fine}, {@code soon} or {@code now}
 * @param advice the same in a sentence or two
 */
public record ProbeLife(
    String probe,
    String type,
    Optional<LocalDate> fitted,
    int firings,
    int highFirings,
    double hoursOver800C,
    double hoursOver1000C,
    double hoursOver1100C,
    double hoursOver1200C,
    Optional<String> drift,
    String replace,
    String advice) {}
