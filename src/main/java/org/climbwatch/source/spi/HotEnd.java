package org.climbwatch.source.spi;

import org.climbwatch.thermocouple.ThermocoupleType;

/** Turns a data sheet's limit in microvolts into degrees where firings are decided. */
final class HotEnd {
  /** Red heat; a couple that ends below is taken at its end. */
  private static final double FROM_C = 1000;

  private HotEnd() {}

  /**
   * Limit of error in °C, rounded up to a tenth.
   *
   * @param limitUv µV at the amplifier's terminals
   * @param furtherC °C that the chip adds on top
   */
  static double errorC(ThermocoupleType type, double limitUv, double furtherC) {
    double fromC = Math.min(FROM_C, type.highestC());
    double flattest = Math.min(type.seebeckUvPerC(fromC), type.seebeckUvPerC(type.highestC()));
    return Math.ceil((limitUv / flattest + furtherC) * 10) / 10;
  }
}
