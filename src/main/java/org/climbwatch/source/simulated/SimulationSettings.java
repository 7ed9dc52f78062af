package org.climbwatch.source.simulated;

/**
 * Which firing the model plays.
 *
 * @param seed reproduces noise and the moment of the fault
 * @param place where the probe sits; probes of the same seed sit in the same kiln
 * @param fault what goes wrong in the first firing; nothing does in later ones
 * @param looks that a reading is the middle of, 0.1 s apart, 1 to {@value #MOST_LOOKS}
 */
public record SimulationSettings(
    FiringKind firing, long seed, FaultKind fault, Place place, int looks) {
  /** A second full of them. */
  public static final int MOST_LOOKS = 10;

  public SimulationSettings {
    if (looks < 1 || looks > MOST_LOOKS) {
      throw new IllegalArgumentException("looks must be 1 to " + MOST_LOOKS + ", was " + looks);
    }
  }

  /** Those of a probe in the upper part of the kiln, with a single look in each reading. */
  public SimulationSettings(FiringKind firing, long seed, FaultKind fault) {
    this(firing, seed, fault, Place.UPPER, 1);
  }
}
