package org.climbwatch.ensemble;

/**
 * An alarm stood.
 *
 * @param fromS s at which it was raised
 * @param untilS s at which its cause was gone, infinite if it never was
 */
record Stood(double fromS, double untilS) {
  static Stood since(double fromS) {
    return new Stood(fromS, Double.POSITIVE_INFINITY);
  }

  boolean isOpen() {
    return Double.isInfinite(untilS);
  }

  Stood until(double second) {
    return new Stood(fromS, second);
  }
}
