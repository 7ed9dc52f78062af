package org.climbwatch.web;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.climbwatch.watch.View;

/**
 * What is true now.
 *
 * @param time wall time of this answer
 * @param view what the core knows; its kiln's name among it
 * @param devices what gives the readings of each of the view's probes, in the same order
 * @param staleAfterS s after which a reading no longer counts as the temperature now
 * @param firingId number of the firing that is on
 * @param elapsedS s since the first reading of the firing that is on
 * @param notices what the user must know at every look, for instance that this is a demonstration
 */
public record Status(
    Instant time,
    View view,
    List<Device> devices,
    double staleAfterS,
    OptionalLong firingId,
    OptionalDouble elapsedS,
    List<String> notices) {
  public Status {
    if (!(staleAfterS > 0)) {
      throw new IllegalArgumentException("staleAfterS must be above 0, was " + staleAfterS);
    }
    devices = List.copyOf(devices);
    if (devices.size() != view.probes().size()) {
      throw new IllegalArgumentException("each probe has one device");
    }
    notices = List.copyOf(notices);
  }

  /**
   * What gives a probe's readings.
   *
   * @param probe its configured name
   * @param line one line for people: which device, and how it is doing
   * @param latestAgeS s since its newest reading arrived; empty before the first
   * @param checked when the probe was last compared with something better known, if ever
   */
  public record Device(
      String probe, String line, OptionalDouble latestAgeS, Optional<Instant> checked) {}

  /** Whether a probe's newest reading is too old to be shown as the temperature now. */
  boolean stale(Device device) {
    return device.latestAgeS().isEmpty() || device.latestAgeS().getAsDouble() > staleAfterS;
  }
}
