package org.climbwatch.signal;

/** How fast a kiln can cool at the most. */
final class Cooling {
  /** °C of a room, about: what a kiln cools towards. */
  static final double ROOM_C = 20;

  /**
   * s in which a kiln that stands open, or a very light one, comes near the room's warmth by two
   * thirds; a shut fibre kiln takes two to four times as long (200 to 400 °C/h at first; common
   * practice).
   */
  private static final double QUICKEST_S = 3600;

  private Cooling() {}

  /**
   * The lowest temperature that a kiln can have come to.
   *
   * @param fromC °C, above {@link #ROOM_C}
   * @param seconds s since it was so hot, 0 or more
   * @return °C
   */
  static double coolestC(double fromC, double seconds) {
    return ROOM_C + (fromC - ROOM_C) * StrictMath.exp(-seconds / QUICKEST_S);
  }
}
