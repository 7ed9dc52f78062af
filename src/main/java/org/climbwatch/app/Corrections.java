package org.climbwatch.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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

  /** The records that were made of the couples in use at a time, before or after it. */
  static List<Calibration> ofTheCouples(Instant then, List<Calibration> recorded) {
    List<Calibration> ofThem = new ArrayList<>();
    Set<String> replaced = new HashSet<>();
    for (Calibration one : recorded) {
      if (!one.checked() && one.at().isAfter(then)) {
        replaced.add(one.probe());
      }
      if (!replaced.contains(one.probe())) {
        ofThem.add(one);
      }
    }
    return ofThem;
  }

  /** The settings with temperatures as read. */
  static WatchSettings none(WatchSettings settings) {
    return inForce(settings, List.of());
  }
}
