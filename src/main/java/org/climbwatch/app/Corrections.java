package org.climbwatch.app;

import java.util.List;
import org.climbwatch.journal.Calibration;
import org.climbwatch.thermocouple.Correction;
import org.climbwatch.watch.WatchSettings;

/** Which corrections the temperatures are computed with. */
final class Corrections {
  private Corrections() {}

  /** The settings with what the latest calibration of each probe says, or without any. */
  static WatchSettings inForce(WatchSettings settings, List<Calibration> recorded) {
    return settings.with(
        settings.probes().stream()
            .map(
                probe ->
                    probe.with(
                        Calibration.latest(recorded, probe.name())
                            .map(Calibration::correction)
                            .orElse(Correction.NONE)))
            .toList());
  }

  /** The settings with temperatures as read. */
  static WatchSettings none(WatchSettings settings) {
    return inForce(settings, List.of());
  }
}
