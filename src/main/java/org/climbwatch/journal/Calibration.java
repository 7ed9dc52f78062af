package org.climbwatch.journal;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.climbwatch.thermocouple.Correction;

/**
 * A record of what was found when a probe was compared with something better known. Records are
 * only ever added; the latest of a probe is in force.
 *
 * @param at wall time, kept to the millisecond
 * @param probe its configured name
 * @param who made the comparison
 * @param how which references, as words with blanks between: {@code ice}, {@code boiling}, {@code
 *     comparison}; or {@link #NEW_COUPLE}
 * @param correction that follows; none for a new couple
 * @param note what was read against what, or why
 */
public record Calibration(
    Instant at, String probe, String who, String how, Correction correction, String note) {
  /** Of a couple put in place of another: what was found of the old one no longer holds. */
  public static final String NEW_COUPLE = "new_couple";

  public Calibration {
    if (probe.isBlank() || who.isBlank() || how.isBlank()) {
      throw new IllegalArgumentException("a calibration names the probe, who and how");
    }
    if (how.equals(NEW_COUPLE) != correction.isNone()) {
      throw new IllegalArgumentException("a calibration has points, a new couple has none");
    }
    at = Instant.ofEpochMilli(at.toEpochMilli());
  }

  /** Whether the probe was compared with anything. */
  public boolean checked() {
    return !how.equals(NEW_COUPLE);
  }

  /** The one in force for a probe: the last recorded, whatever the clock said then. */
  public static Optional<Calibration> latest(List<Calibration> recorded, String probe) {
    return recorded.stream()
        .filter(one -> one.probe.equals(probe))
        .reduce((earlier, later) -> later);
  }
}
