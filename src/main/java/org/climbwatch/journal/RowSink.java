package org.climbwatch.journal;

import java.io.IOException;

/** Takes the rows of a firing's record in their order. */
public interface RowSink {
  /** In place of a number that a row does not have. */
  int NONE = Codes.NONE;

  /**
   * One reading.
   *
   * @param wallMs ms since 1970 UTC
   * @param elapsedMs ms since the firing's first reading, never less than in the row before
   * @param temperatureMilliC 0.001 °C, or {@link #NONE}
   * @param uncertaintyCentiC 0.01 °C, k = 2, or {@link #NONE}
   * @param climbDeciCPerHour 0.1 °C/h, or {@link #NONE}
   * @param emfTenthUv 0.1 µV between the amplifier's terminals, or {@link #NONE}
   * @param coldJunctionMilliC 0.001 °C, or {@link #NONE}
   * @param quality {@code good}, or the fault's word
   * @param phase the phase's word
   * @param samples how many looks the signal is the middle of, or {@link #NONE}
   * @param spreadTenthUv 0.1 µV, spread of the emf of several looks, or {@link #NONE}
   * @param spreadMilliC 0.001 °C, spread of several temperatures that the instrument linearised
   *     itself, or {@link #NONE}
   */
  void reading(
      long wallMs,
      long elapsedMs,
      String probe,
      int temperatureMilliC,
      int uncertaintyCentiC,
      int climbDeciCPerHour,
      int emfTenthUv,
      int coldJunctionMilliC,
      String quality,
      String phase,
      int samples,
      int spreadTenthUv,
      int spreadMilliC)
      throws IOException;

  /**
   * One thing that the potter or the program did.
   *
   * @param phase of the reading before it
   */
  void deed(RecordedDeed deed, String phase) throws IOException;
}
