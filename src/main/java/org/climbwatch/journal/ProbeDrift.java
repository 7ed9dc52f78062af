package org.climbwatch.journal;

/**
 * How two probes of one kiln stood to each other in early firings and in the last ones. What
 * changes between them is no kiln's habit: one of the couples has drifted, or was moved, or the
 * kiln is fired in another way.
 *
 * @param beside the probe that the firings followed
 * @param earlierC °C by which this one read above it, the middle of the first firings
 * @param latelyC the same of the last firings
 * @param firings how many the middle is of, each time
 */
public record ProbeDrift(String beside, double earlierC, double latelyC, int firings) {
  /** °C by which it has come to read higher beside the other. */
  public double changeC() {
    return latelyC - earlierC;
  }
}
